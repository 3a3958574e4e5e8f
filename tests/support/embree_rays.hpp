// SPDX-License-Identifier: MIT
#pragma once

#include "base/parallel.hpp"
#include "sight/seated_room.hpp"

#include <algorithm>
#include <array>
#include <embree3/rtcore.h>
#include <memory>
#include <vector>

/// The hidden fraction by many rays through Embree, a general-purpose ray tracer (Debian's
/// libembree-dev). The room is squeezed along the vertical until the heads, all of one shape, are
/// spheres, which Embree has as exact surfaces; straight lines stay straight.
namespace rakeline::tests {

inline constexpr int kPacket = 16;

struct EmbreeDeviceDeleter {
    void operator()(RTCDevice device) const { rtcReleaseDevice(device); }
};
struct EmbreeSceneDeleter {
    void operator()(RTCScene scene) const { rtcReleaseScene(scene); }
};
using EmbreeDevice = std::unique_ptr<RTCDeviceTy, EmbreeDeviceDeleter>;
using EmbreeScene = std::unique_ptr<RTCSceneTy, EmbreeSceneDeleter>;

inline EmbreeDevice embree_device() {
    return EmbreeDevice(rtcNewDevice("threads=1"));
}

/// Height over breadth of the heads: the vertical is divided by it.
inline double squeeze_of(const SeatedRoom& room) {
    return room.heads.empty() ? 1.0
                              : room.heads.front().half_height_m / room.heads.front().radius_m;
}

struct EmbreePoint {
    float x, y, z;
};

inline EmbreePoint squeezed(const glm::dvec3& p, double squeeze) {
    return {static_cast<float>(p.x), static_cast<float>(p.y / squeeze), static_cast<float>(p.z)};
}

inline void attach(RTCDevice, RTCScene scene, RTCGeometry geometry) {
    rtcCommitGeometry(geometry);
    rtcAttachGeometry(scene, geometry);
    rtcReleaseGeometry(geometry);
}

inline void add_spheres(RTCDevice device, RTCScene scene, const SeatedRoom& room) {
    if (room.heads.empty()) return;
    RTCGeometry spheres = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_SPHERE_POINT);
    auto* out = static_cast<std::array<float, 4>*>(
        rtcSetNewGeometryBuffer(spheres, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT4,
                                sizeof(std::array<float, 4>), room.heads.size()));
    for (const sight::Head& head : room.heads) {
        const EmbreePoint p = squeezed(head.centre, squeeze_of(room));
        *out++ = {p.x, p.y, p.z, static_cast<float>(head.radius_m)};
    }
    attach(device, scene, spheres);
}

using Rectangle3 = std::array<glm::dvec3, 4>;

/// Each seat's wall as a rectangle from its edge 50 m down along the picture's generator, on the
/// balcony down to its floor; and the balcony's slab and wall as they stand, to be met from
/// wherever the eye is.
inline std::vector<Rectangle3> wall_rectangles(const SeatedRoom& room) {
    std::vector<Rectangle3> out;
    for (const sight::Wall& wall : room.walls) {
        if (wall.eye < 0) continue;
        const bool upstairs = room.balcony && wall.from.y > room.balcony->floor_m;
        const double down_m = upstairs ? wall.from.y - room.balcony->floor_m : 50.0;
        const glm::dvec3 away = -down_m * room.surface.up;
        out.push_back({wall.from, wall.to, wall.to + away, wall.from + away});
    }
    if (!room.balcony) return out;
    const Balcony& b = *room.balcony;
    const auto at = [](double x, double y, double z) { return glm::dvec3(x, y, z); };
    const double far = 60.0;
    out.push_back({at(-far, b.under_m, b.front_m), at(far, b.under_m, b.front_m),
                   at(far, b.wall_top_m, b.front_m), at(-far, b.wall_top_m, b.front_m)});
    for (const double up : {b.under_m, b.floor_m}) {
        out.push_back({at(-far, up, b.front_m), at(far, up, b.front_m),
                       at(far, up, b.front_m + far), at(-far, up, b.front_m + far)});
    }
    return out;
}

inline void add_walls(RTCDevice device, RTCScene scene, const SeatedRoom& room) {
    const std::vector<Rectangle3> rectangles = wall_rectangles(room);
    if (rectangles.empty()) return;
    RTCGeometry walls = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_QUAD);
    auto* points = static_cast<EmbreePoint*>(
        rtcSetNewGeometryBuffer(walls, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3,
                                sizeof(EmbreePoint), 4 * rectangles.size()));
    auto* quads = static_cast<std::array<unsigned, 4>*>(
        rtcSetNewGeometryBuffer(walls, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT4,
                                sizeof(std::array<unsigned, 4>), rectangles.size()));
    unsigned at = 0;
    for (const Rectangle3& corners : rectangles) {
        for (const glm::dvec3& p : corners)
            *points++ = squeezed(p, squeeze_of(room));
        *quads++ = {at, at + 1, at + 2, at + 3};
        at += 4;
    }
    attach(device, scene, walls);
}

inline EmbreeScene embree_scene(RTCDevice device, const SeatedRoom& room) {
    EmbreeScene scene(rtcNewScene(device));
    rtcSetSceneBuildQuality(scene.get(), RTC_BUILD_QUALITY_HIGH);
    add_spheres(device, scene.get(), room);
    add_walls(device, scene.get(), room);
    rtcCommitScene(scene.get());
    return scene;
}

/// Where the rays go: a grid on the picture; each column of it starts at a height of its own, so
/// that an edge that runs along the rows does not meet all of them at once.
struct RayGrid {
    int across = 512;
    int up = 128;
    std::vector<glm::dvec3> points;  ///< across x up
};

inline RayGrid ray_grid(const SeatedRoom& room, int across, int up) {
    RayGrid grid{across, up, {}};
    const geometry::Rectangle& uv = room.opening.uv;
    for (int j = 0; j < across; ++j) {
        const double shift = std::fmod(0.5 + j * 0.6180339887498949, 1.0);
        for (int i = 0; i < up; ++i) {
            grid.points.push_back(
                geometry::point_at(room.surface, {uv.left + uv.width() * (j + 0.5) / across,
                                                  uv.bottom + uv.height() * (i + shift) / up}));
        }
    }
    return grid;
}

/// The rays' ends as Embree takes them, for all seats.
struct RayEnds {
    std::vector<float> x, y, z;
};

inline RayEnds ray_ends(const RayGrid& grid, double squeeze) {
    RayEnds out;
    for (const glm::dvec3& p : grid.points) {
        const EmbreePoint e = squeezed(p, squeeze);
        out.x.push_back(e.x);
        out.y.push_back(e.y);
        out.z.push_back(e.z);
    }
    while (out.x.size() % kPacket != 0) {  // spare lanes, masked off
        out.x.push_back(0.0F);
        out.y.push_back(0.0F);
        out.z.push_back(0.0F);
    }
    return out;
}

/// Rays of one eye that meet something. They start outside the eye's own head, a sphere about it.
inline std::size_t hidden_rays(RTCScene scene,
                               const RayEnds& ends,
                               std::size_t count,
                               const EmbreePoint& eye,
                               float own_radius) {
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    context.flags = RTC_INTERSECT_CONTEXT_FLAG_COHERENT;
    std::size_t hidden = 0;
    for (std::size_t at = 0; at < count; at += kPacket) {
        alignas(64) RTCRay16 rays{};
        alignas(64) int valid[kPacket];
        for (int k = 0; k < kPacket; ++k) {
            const std::size_t i = at + static_cast<std::size_t>(k);
            valid[k] = i < count ? -1 : 0;
            rays.org_x[k] = eye.x;
            rays.org_y[k] = eye.y;
            rays.org_z[k] = eye.z;
            rays.dir_x[k] = ends.x[i] - eye.x;
            rays.dir_y[k] = ends.y[i] - eye.y;
            rays.dir_z[k] = ends.z[i] - eye.z;
            const float length =
                std::sqrt(rays.dir_x[k] * rays.dir_x[k] + rays.dir_y[k] * rays.dir_y[k] +
                          rays.dir_z[k] * rays.dir_z[k]);
            rays.tnear[k] = 1.001F * own_radius / length;
            rays.tfar[k] = 0.9999F;
            rays.mask[k] = ~0U;
        }
        rtcOccluded16(valid, scene, &context, &rays);
        for (int k = 0; k < kPacket; ++k)
            hidden += valid[k] != 0 && rays.tfar[k] < 0.0F;
    }
    return hidden;
}

/// For every eye.
inline std::vector<double> embree_hidden(const SeatedRoom& room,
                                         RTCScene scene,
                                         const RayGrid& grid) {
    const double squeeze = squeeze_of(room);
    const RayEnds ends = ray_ends(grid, squeeze);
    std::vector<double> out(room.eyes.size());
    const auto some = [&](std::size_t begin, std::size_t end) {
        for (std::size_t seat = begin; seat < end; ++seat) {
            const auto own = static_cast<float>(room.heads[seat].radius_m);
            const std::size_t hidden = hidden_rays(scene, ends, grid.points.size(),
                                                   squeezed(room.eyes[seat], squeeze), own);
            out[seat] = static_cast<double>(hidden) / static_cast<double>(grid.points.size());
        }
    };
    base::parallel_chunks(out.size(), 8, some);
    return out;
}

}  // namespace rakeline::tests
