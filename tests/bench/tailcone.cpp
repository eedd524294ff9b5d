#include "bench/tailcone.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace linewright::bench {
namespace {

constexpr double front_in = 150;
constexpr double length_in = 100;
constexpr int frame_count = 11;
constexpr int stringer_count = 16;
constexpr double full_turn = 2 * std::numbers::pi;

double frame_station(int index) {
  return front_in + 0.3 + (length_in - 1) * index / (frame_count - 1);
}

double radius_at(double station) {
  return 14 - 8 * (station - front_in) / length_in;
}

/// A place on the cone, `inward` in from its outer face; a little taller than wide.
Vec3 on_cone(double station, double angle, double inward) {
  const double radius = radius_at(station) - inward;
  return {station, 0.9 * radius * std::sin(angle), 20 + radius * std::cos(angle)};
}

using Corners = std::array<float, 9>;

Corners rounded(Vec3 a, Vec3 b, Vec3 c) {
  Corners corners{};
  std::size_t next = 0;
  for (const Vec3& corner : {a, b, c})
    for (const double number : {corner.x, corner.y, corner.z})
      corners[next++] = static_cast<float>(number);
  return corners;
}

class Mesh {
 public:
  explicit Mesh(double fineness) : fineness_(fineness) {}

  /// Pieces that an edge is cut into at this fineness.
  int pieces(double at_one) const { return std::max(1, static_cast<int>(at_one * fineness_)); }

  void triangle(Vec3 a, Vec3 b, Vec3 c) { triangles_.push_back(rounded(a, b, c)); }

  /// A patch of `nu` by `nv` cells of a surface over the unit square.
  template <typename Surface>
  void patch(int nu, int nv, const Surface& surface) {
    for (int i = 0; i < nu; ++i)
      for (int j = 0; j < nv; ++j) {
        const auto corner = [&](int di, int dj) {
          return surface(static_cast<double>(i + di) / nu, static_cast<double>(j + dj) / nv);
        };
        triangle(corner(0, 0), corner(1, 0), corner(1, 1));
        triangle(corner(0, 0), corner(1, 1), corner(0, 1));
      }
  }

  std::vector<Corners> taken() { return std::move(triangles_); }

 private:
  double fineness_;
  std::vector<Corners> triangles_;
};

void add_skin(Mesh& mesh) {
  for (const double inward : {0.0, 0.032})
    mesh.patch(mesh.pieces(20), mesh.pieces(40), [&](double u, double v) {
      return on_cone(front_in + length_in * u, full_turn * v, inward);
    });
}

/// One field of a web, from one angle to another, with a round hole in its middle: rings from the
/// hole outwards would be even, so each spoke goes from hole to border in few, long triangles.
void add_holed_field(Mesh& mesh, double station, double from, double to) {
  constexpr double rim = 0.05;
  constexpr double depth = 2.6;
  const double middle = (from + to) / 2;
  const Vec3 centre = on_cone(station, middle, rim + depth / 2);
  const auto border = [&](double turn) {
    const double side = turn * 4;
    const double part = side - std::floor(side);
    switch (static_cast<int>(side) % 4) {
      case 0:
        return on_cone(station, from + (to - from) * part, rim);
      case 1:
        return on_cone(station, to, rim + depth * part);
      case 2:
        return on_cone(station, to - (to - from) * part, rim + depth);
      default:
        return on_cone(station, from, rim + depth * (1 - part));
    }
  };
  const auto hole = [&](double turn) {
    const double angle = middle + full_turn * (turn + 0.625);
    return centre + Vec3{0, 0.7 * std::sin(angle), 0.7 * std::cos(angle)};
  };
  mesh.patch(mesh.pieces(14) + 6, mesh.pieces(1.2),
             [&](double u, double v) { return between(hole(u), border(u >= 1 ? 0 : u), v); });
}

void add_frame(Mesh& mesh, double station) {
  constexpr int fields = 12;
  for (int i = 0; i < fields; ++i)
    add_holed_field(mesh, station, full_turn * i / fields, full_turn * (i + 1) / fields);
  mesh.patch(mesh.pieces(48), mesh.pieces(1.5),
             [&](double u, double v) { return on_cone(station + 0.6 * v, full_turn * u, 2.65); });
}

void add_stringer(Mesh& mesh, double angle) {
  // A hat section: offsets around the cone and inward.
  constexpr double section[][2] = {{-0.9, 0.04}, {-0.5, 0.04}, {-0.35, 0.75},
                                   {0.35, 0.75}, {0.5, 0.04},  {0.9, 0.04}};
  for (int side = 0; side + 1 < 6; ++side)
    mesh.patch(mesh.pieces(24), mesh.pieces(1), [&](double u, double v) {
      const double station = front_in + length_in * u;
      const double across = section[side][0] + (section[side + 1][0] - section[side][0]) * v;
      const double inward = section[side][1] + (section[side + 1][1] - section[side][1]) * v;
      return on_cone(station, angle + across / radius_at(station), inward);
    });
}

void add_clip(Mesh& mesh, double station, double angle) {
  const int n = mesh.pieces(1.5);
  mesh.patch(n, n, [&](double u, double v) { return on_cone(station + u, angle + 0.08 * v, 0.8); });
  mesh.patch(n, n, [&](double u, double v) { return on_cone(station + u, angle, 0.8 + 0.9 * v); });
}

std::vector<Corners> tailcone_of(double fineness) {
  Mesh mesh(fineness);
  add_skin(mesh);
  for (int i = 0; i < frame_count; ++i) add_frame(mesh, frame_station(i));
  for (int i = 0; i < stringer_count; ++i)
    add_stringer(mesh, full_turn * (i + 0.5) / stringer_count);
  for (int i = 0; i + 1 < frame_count; ++i)
    for (int k = 0; k < stringer_count; ++k)
      add_clip(mesh, frame_station(i) + 2, full_turn * (k + 0.5) / stringer_count);
  return mesh.taken();
}

class RouteWriter {
 public:
  RouteWriter(std::vector<Segment3>& segments, std::mt19937_64& random)
      : segments_(segments), random_(random) {}

  double between_values(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

  /// Lengths from 0.16 to 15.2 in, half of them under 2.2 in.
  double segment_length() {
    const double length = std::lognormal_distribution<double>(std::log(2.2), 0.8)(random_);
    return std::clamp(length, 0.16, 15.2);
  }

  template <typename Path>
  void write(std::size_t count, const Path& next) {
    Vec3 at = next(0);
    double gone = 0;
    for (std::size_t i = 0; i < count; ++i) {
      gone += segment_length();
      const Vec3 to = next(gone);
      segments_.push_back({at, to});
      at = to;
    }
  }

 private:
  std::vector<Segment3>& segments_;
  std::mt19937_64& random_;
};

/// To and fro between 0 and `span` as `gone` grows.
double to_and_fro(double gone, double span) {
  const double lap = std::fmod(gone, 2 * span);
  return lap <= span ? lap : 2 * span - lap;
}

void write_route(RouteWriter& writer, std::size_t index, std::size_t count) {
  const double angle = writer.between_values(0, full_turn);
  const double start = writer.between_values(0, length_in);
  const auto jitter = [&] { return writer.between_values(-0.2, 0.2); };
  if (index % 10 < 6) {
    const double inward = writer.between_values(2.8, 3.3);
    writer.write(count, [&](double gone) {
      return on_cone(front_in + to_and_fro(start + gone, length_in), angle + 0.1 * jitter(),
                     inward + jitter());
    });
  } else if (index % 10 < 9) {
    // Between two frames, inside of the stringers and the clips.
    const double inward = writer.between_values(1.1, 1.8);
    const double station = frame_station(static_cast<int>(index) % (frame_count - 1)) +
                           writer.between_values(1.2, 8.5);
    writer.write(count, [&](double gone) {
      return on_cone(station + jitter(), angle + gone / 9, inward + jitter());
    });
  } else {
    double station = start;
    double turned = angle;
    double gone_before = 0;
    writer.write(count, [&](double gone) {
      const double step = gone - gone_before;
      gone_before = gone;
      station = std::clamp(station + step * writer.between_values(-0.9, 0.9), 0.0, length_in);
      turned += step / 9 * writer.between_values(-0.9, 0.9);
      return on_cone(front_in + station, turned, writer.between_values(0.7, 4.0));
    });
  }
}

}  // namespace

Vec3 inside_tailcone(double station, double angle, double inward) {
  return on_cone(station, angle, inward);
}

std::vector<Corners> tailcone_corners(std::size_t wanted) {
  double fineness = 1;
  std::vector<Corners> triangles = tailcone_of(fineness);
  for (int round = 0; round < 6; ++round) {
    const double ratio = static_cast<double>(wanted) / static_cast<double>(triangles.size());
    if (std::abs(ratio - 1) < 0.05) break;
    fineness *= std::sqrt(ratio);
    triangles = tailcone_of(fineness);
  }
  return triangles;
}

std::vector<Triangle3> tailcone(std::size_t wanted) {
  std::vector<Triangle3> triangles;
  for (const Corners& c : tailcone_corners(wanted))
    triangles.push_back({{c[0], c[1], c[2]}, {c[3], c[4], c[5]}, {c[6], c[7], c[8]}});
  return triangles;
}

std::vector<Segment3> route_segments(std::size_t routes, std::size_t per_route) {
  std::mt19937_64 random(20);
  std::vector<Segment3> segments;
  segments.reserve(routes * per_route);
  RouteWriter writer(segments, random);
  for (std::size_t route = 0; route < routes; ++route) write_route(writer, route, per_route);
  return segments;
}

}  // namespace linewright::bench
