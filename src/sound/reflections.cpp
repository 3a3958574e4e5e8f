// SPDX-License-Identifier: MIT
#include "sound/reflections.hpp"

#include "base/parallel.hpp"
#include "base/units.hpp"
#include "sound/direct_path.hpp"

#include <array>
#include <cmath>

namespace rakeline::sound {
namespace {

constexpr auto kWalls =
    std::to_array({Wall::left, Wall::right, Wall::rear, Wall::ceiling, Wall::screen});

std::size_t index(Wall wall) {
    return static_cast<std::size_t>(wall);
}

/// On the floor's upper side and on the inner side of every wall; a point on one of the walls
/// itself counts for that wall, which `on` says.
bool inside(const WallPlanes& walls, const glm::dvec3& p, Wall on) {
    if (p.y < 0.0) return false;
    for (const Wall wall : kWalls)
        if (wall != on && walls[index(wall)].before_m(p) < 0.0) return false;
    return true;
}

/// Where the line from a point before the plane to the image behind it passes the plane.
glm::dvec3 crossing(const WallPlane& plane, const glm::dvec3& before, const glm::dvec3& image) {
    const double d = plane.before_m(before);
    return before + (image - before) * (d / (d - plane.before_m(image)));
}

/// A loudspeaker's images, worked out once for all seats.
struct Images {
    glm::dvec3 source{0.0};
    struct Once {
        Wall wall = Wall::left;
        glm::dvec3 image{0.0};
    };
    struct Twice {
        Wall first = Wall::left, second = Wall::left;
        glm::dvec3 once{0.0}, twice{0.0};
    };
    std::vector<Once> once;
    std::vector<Twice> twice;
};

void add_second_images(const WallPlanes& walls, const Images::Once& first, Images& out) {
    for (const Wall second : kWalls) {
        // An image that stands on the second wall's far side is not seen in it.
        if (second == first.wall || walls[index(second)].before_m(first.image) <= 0.0) continue;
        out.twice.push_back(
            {first.wall, second, first.image, walls[index(second)].image(first.image)});
    }
}

Images images_of(const WallPlanes& walls, const glm::dvec3& source) {
    Images out{.source = source, .once = {}, .twice = {}};
    for (const Wall wall : kWalls) {
        if (wall == Wall::screen || walls[index(wall)].before_m(source) <= 0.0) continue;
        out.once.push_back({wall, walls[index(wall)].image(source)});
        add_second_images(walls, out.once.back(), out);
    }
    return out;
}

std::optional<ReflectedPath> path_of(const WallPlanes& walls,
                                     const Images::Once& image,
                                     const glm::dvec3& ear) {
    const WallPlane& plane = walls[index(image.wall)];
    if (plane.before_m(ear) <= 0.0) return std::nullopt;
    ReflectedPath path{.first = image.wall, .second = {}};
    path.at_first = crossing(plane, ear, image.image);
    if (!inside(walls, path.at_first, image.wall)) return std::nullopt;
    path.length_m = glm::length(image.image - ear);
    return path;
}

std::optional<ReflectedPath> path_of(const WallPlanes& walls,
                                     const Images::Twice& image,
                                     const glm::dvec3& ear) {
    const WallPlane& second = walls[index(image.second)];
    if (second.before_m(ear) <= 0.0) return std::nullopt;
    ReflectedPath path{.first = image.first, .second = image.second};
    path.at_second = crossing(second, ear, image.twice);
    if (!inside(walls, path.at_second, image.second)) return std::nullopt;
    path.at_first = crossing(walls[index(image.first)], path.at_second, image.once);
    if (!inside(walls, path.at_first, image.first)) return std::nullopt;
    path.length_m = glm::length(image.twice - ear);
    return path;
}

template <class Visit>
void for_each_path(const WallPlanes& walls,
                   const Images& images,
                   const glm::dvec3& ear,
                   const Visit& visit) {
    for (const auto& image : images.once)
        if (const auto path = path_of(walls, image, ear)) visit(*path);
    for (const auto& image : images.twice)
        if (const auto path = path_of(walls, image, ear)) visit(*path);
}

/// Level of a loudspeaker toward a point, dB from its axis.
class Toward {
public:
    Toward(const room::Loudspeaker& loudspeaker, const Beam& beam)
        : from_(loudspeaker.across_m, loudspeaker.up_m, loudspeaker.back_m),
          axes_(axes_of(loudspeaker)),
          beam_(beam) {}

    const glm::dvec3& from() const { return from_; }
    double level_db(const glm::dvec3& to) const {
        const glm::dvec3 way = to - from_;
        const double x = glm::dot(way, axes_.across);
        const double y = glm::dot(way, axes_.up);
        const double z = glm::dot(way, axes_.forward);
        const double sine_squared = x * x + y * y;
        if (sine_squared == 0.0) return beam_.level_db({.angle_rad = z < 0.0 ? base::kPi : 0.0});
        return beam_.level_db({.angle_rad = std::atan2(std::sqrt(sine_squared), z),
                               .across_share = x * x / sine_squared,
                               .up_share = y * y / sine_squared});
    }

private:
    glm::dvec3 from_;
    LoudspeakerAxes axes_;
    const Beam& beam_;
};

/// Sifts the paths to one seat. A path's directivity is worked out only where the path could still
/// be one of those that are kept: by spreading and walls alone it is a bound.
class Sieve {
public:
    Sieve(const ReflectionRoom& room, const Toward& toward, const glm::dvec3& ear)
        : room_(room),
          toward_(toward),
          direct_m_(glm::length(ear - toward.from())),
          direct_db_(toward.level_db(ear)) {}

    void take(const ReflectedPath& path) {
        double energy = room_.returns[index(path.first)];
        if (path.second) energy *= room_.returns[index(*path.second)];
        if (energy <= 0.0) return;
        const double shorter = direct_m_ / path.length_m;
        const double delay_s = (path.length_m - direct_m_) / room_.sound_speed_m_s;
        const double most_db = 10.0 * std::log10(energy * shorter * shorter) - direct_db_;
        if (!could_be_kept(delay_s, most_db)) return;
        keep({delay_s, most_db + toward_.level_db(path.at_first), path.first, path.second});
    }
    const SeatReflections& kept() const { return kept_; }

private:
    bool could_be_kept(double delay_s, double most_db) const {
        const auto louder = [&](const std::optional<Reflection>& than) {
            return !than || most_db > than->level_db;
        };
        const bool sooner = !kept_.first || delay_s < kept_.first->delay_s;
        return (sooner && most_db >= kHeardReflectionDb) || louder(kept_.strongest) ||
               (delay_s >= kEchoAfter_s && louder(kept_.echo));
    }

    void keep(const Reflection& r) {
        const auto louder = [&](const std::optional<Reflection>& than) {
            return !than || r.level_db > than->level_db;
        };
        const bool sooner = !kept_.first || r.delay_s < kept_.first->delay_s;
        if (sooner && r.level_db >= kHeardReflectionDb) kept_.first = r;
        if (louder(kept_.strongest)) kept_.strongest = r;
        if (r.delay_s >= kEchoAfter_s && louder(kept_.echo)) kept_.echo = r;
    }

    const ReflectionRoom& room_;
    const Toward& toward_;
    double direct_m_;
    double direct_db_;
    SeatReflections kept_;
};

}  // namespace

std::vector<ReflectedPath> reflected_paths(const WallPlanes& walls,
                                           const glm::dvec3& from,
                                           const glm::dvec3& to) {
    std::vector<ReflectedPath> out;
    for_each_path(walls, images_of(walls, from), to,
                  [&](const ReflectedPath& path) { out.push_back(path); });
    return out;
}

std::vector<SeatReflections> seat_reflections(const ReflectionRoom& room,
                                              const room::Loudspeaker& loudspeaker,
                                              const Beam& beam,
                                              const std::vector<glm::dvec3>& ears) {
    const Toward toward(loudspeaker, beam);
    const Images images = images_of(room.walls, toward.from());
    std::vector<SeatReflections> out(ears.size());
    constexpr std::size_t kLeastSeats = 200;  // a thread costs as much
    base::parallel_chunks(ears.size(), kLeastSeats, [&](std::size_t begin, std::size_t end) {
        for (std::size_t s = begin; s < end; ++s) {
            Sieve sieve(room, toward, ears[s]);
            for_each_path(room.walls, images, ears[s],
                          [&](const ReflectedPath& path) { sieve.take(path); });
            out[s] = sieve.kept();
        }
    });
    return out;
}

}  // namespace rakeline::sound
