#pragma once
// Plain vectors. Space is fuselage station (x, positive aft), buttock line (y, positive to the
// right-hand side) and waterline (z, positive up), all in inches: a right-handed frame.

#include <cmath>

namespace linewright {

/// A point or direction in space: x = FS, y = BL, z = WL, inches.
struct Vec3 {
  double x = 0;
  double y = 0;
  double z = 0;

  friend bool operator==(const Vec3&, const Vec3&) = default;
};

/// A point in a frame's plane or a channel's section, inches.
struct Vec2 {
  double u = 0;
  double v = 0;

  friend bool operator==(const Vec2&, const Vec2&) = default;
};

constexpr Vec3 operator+(Vec3 a, Vec3 b) {
  return {a.x + b.x, a.y + b.y, a.z + b.z};
}
constexpr Vec3 operator-(Vec3 a, Vec3 b) {
  return {a.x - b.x, a.y - b.y, a.z - b.z};
}
constexpr Vec3 operator-(Vec3 a) {
  return {-a.x, -a.y, -a.z};
}
constexpr Vec3 operator*(Vec3 a, double k) {
  return {a.x * k, a.y * k, a.z * k};
}
constexpr Vec3 operator*(double k, Vec3 a) {
  return a * k;
}
constexpr Vec3 operator/(Vec3 a, double k) {
  return {a.x / k, a.y / k, a.z / k};
}
constexpr double dot(Vec3 a, Vec3 b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
constexpr Vec3 cross(Vec3 a, Vec3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
/// By the square root, which is the same to the last digit on every machine, and not a number where
/// a part of it is not: of three parts std::hypot may give 0 then.
inline double norm(Vec3 a) {
  return std::sqrt(a.x * a.x + a.y * a.y + a.z * a.z);
}
inline double distance(Vec3 a, Vec3 b) {
  return norm(b - a);
}

/// Unit vector along `a`. Precondition: `a` is not the zero vector.
inline Vec3 unit(Vec3 a) {
  return a / norm(a);
}

/// Angle between two directions of any length, from 0 to pi. By its tangent, for the cosine tells
/// little of small angles.
inline double angle_between_rad(Vec3 a, Vec3 b) {
  return std::atan2(norm(cross(a, b)), dot(a, b));
}

/// The point a fraction `t` of the way from `a` to `b`.
constexpr Vec3 between(Vec3 a, Vec3 b, double t) {
  return a + (b - a) * t;
}

constexpr Vec2 operator+(Vec2 a, Vec2 b) {
  return {a.u + b.u, a.v + b.v};
}
constexpr Vec2 operator-(Vec2 a, Vec2 b) {
  return {a.u - b.u, a.v - b.v};
}
constexpr Vec2 operator*(Vec2 a, double k) {
  return {a.u * k, a.v * k};
}
constexpr double dot(Vec2 a, Vec2 b) {
  return a.u * b.u + a.v * b.v;
}
constexpr double cross(Vec2 a, Vec2 b) {
  return a.u * b.v - a.v * b.u;
}
inline double norm(Vec2 a) {
  return std::sqrt(a.u * a.u + a.v * a.v);
}
inline double distance(Vec2 a, Vec2 b) {
  return norm(b - a);
}

}  // namespace linewright
