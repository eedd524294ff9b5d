#pragma once
// Mesh files written by a test, and what is read of them.

#include <gtest/gtest.h>

#include <array>
#include <cstdint>
#include <cstring>
#include <string>
#include <vector>

#include "input/mesh/read_mesh_file.hpp"
#include "input/project_folder.hpp"

namespace linewright {

using MeshReading = Expected<MeshTriangles, Diagnostic>;
using Corners = std::array<float, 9>;

/// Reads a file of these bytes; as far out as a project in inches allows.
inline MeshReading read_bytes(const std::string& name, const std::string& bytes) {
  const ProjectFolder folder;
  folder.write(name, bytes);
  return read_mesh_file(folder.path() / name, name, 1e6);
}

/// What is wrong, as "file:line:column: message", or "read" where nothing is.
inline std::string fault_of(const MeshReading& reading) {
  if (reading) return "read";
  const Diagnostic& fault = reading.error();
  std::string place = fault.where.file;
  if (fault.where.line > 0)
    place += ":" + std::to_string(fault.where.line) + ":" + std::to_string(fault.where.column);
  return place + ": " + fault.message;
}

inline MeshTriangles mesh_of(const MeshReading& reading) {
  EXPECT_EQ(fault_of(reading), "read");
  return reading ? *reading : MeshTriangles();
}

template <typename Value>
std::string little_endian(Value value) {
  std::string bytes(sizeof value, '\0');
  std::memcpy(bytes.data(), &value, sizeof value);
  return bytes;
}

/// Binary STL with a head of 80 times `fill`.
inline std::string binary_stl(const std::vector<Corners>& triangles, char fill = '\0') {
  std::string bytes(80, fill);
  bytes += little_endian(static_cast<std::uint32_t>(triangles.size()));
  for (const Corners& corners : triangles) {
    bytes += std::string(12, '\0');
    for (const float coordinate : corners) bytes += little_endian(coordinate);
    bytes += std::string(2, '\0');
  }
  return bytes;
}

/// A binary glTF file of a description and the bytes it speaks of.
inline std::string glb(std::string json, std::string binary) {
  while (json.size() % 4 != 0) json += ' ';
  while (binary.size() % 4 != 0) binary += '\0';
  std::string bytes = "glTF" + little_endian(std::uint32_t{2});
  const std::size_t binary_chunk = binary.empty() ? 0 : 8 + binary.size();
  bytes += little_endian(static_cast<std::uint32_t>(12 + 8 + json.size() + binary_chunk));
  bytes += little_endian(static_cast<std::uint32_t>(json.size())) + "JSON" + json;
  if (!binary.empty())
    bytes +=
        little_endian(static_cast<std::uint32_t>(binary.size())) + std::string("BIN\0", 4) + binary;
  return bytes;
}

}  // namespace linewright
