// SPDX-License-Identifier: MIT
#pragma once

#include "bench/timing.hpp"
#include "support/embree_rays.hpp"

#include <numbers>
#include <string>
#include <thread>

/// Embree at its best for the same question: heads as spheres, as instances of one mesh, or as one
/// large mesh; rays in packets of 16.
namespace rakeline::bench {

enum class HeadsAs { spheres, instances, triangles };

inline const char* name_of(HeadsAs kind) {
    if (kind == HeadsAs::spheres) return "spheres";
    return kind == HeadsAs::instances ? "instances" : "triangles";
}

/// A sphere of radius 1 as 80 triangles: the icosahedron, each face cut in four.
struct Ball {
    std::vector<glm::dvec3> points;
    std::vector<std::array<unsigned, 3>> faces;
};

inline Ball icosahedron() {
    const double t = std::numbers::phi;
    Ball ball;
    for (const double a : {-1.0, 1.0}) {
        for (const double b : {-t, t}) {
            ball.points.push_back({a, b, 0.0});
            ball.points.push_back({0.0, a, b});
            ball.points.push_back({b, 0.0, a});
        }
    }
    const double edge = 2.0 + 1e-6;
    const auto near = [&](unsigned i, unsigned j) {
        return glm::length(ball.points[i] - ball.points[j]) < edge;
    };
    for (unsigned i = 0; i < 12; ++i) {
        for (unsigned j = i + 1; j < 12; ++j) {
            for (unsigned k = j + 1; k < 12; ++k) {
                if (near(i, j) && near(j, k) && near(i, k)) ball.faces.push_back({i, j, k});
            }
        }
    }
    return ball;
}

inline Ball ball_of_80() {
    const Ball coarse = icosahedron();
    Ball out;
    for (const auto& f : coarse.faces) {
        const glm::dvec3 a = glm::normalize(coarse.points[f[0]]);
        const glm::dvec3 b = glm::normalize(coarse.points[f[1]]);
        const glm::dvec3 c = glm::normalize(coarse.points[f[2]]);
        const glm::dvec3 ab = glm::normalize(a + b);
        const glm::dvec3 bc = glm::normalize(b + c);
        const glm::dvec3 ca = glm::normalize(c + a);
        for (const auto& corners : {std::array{a, ab, ca}, std::array{ab, b, bc},
                                    std::array{ca, bc, c}, std::array{ab, bc, ca}}) {
            const auto at = static_cast<unsigned>(out.points.size());
            out.points.insert(out.points.end(), corners.begin(), corners.end());
            out.faces.push_back({at, at + 1, at + 2});
        }
    }
    return out;
}

inline void add_mesh(RTCDevice device, RTCScene scene, const Ball& ball) {
    RTCGeometry mesh = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
    auto* points = static_cast<tests::EmbreePoint*>(
        rtcSetNewGeometryBuffer(mesh, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3,
                                sizeof(tests::EmbreePoint), ball.points.size()));
    for (const glm::dvec3& p : ball.points)
        *points++ = tests::squeezed(p, 1.0);
    auto* faces = static_cast<std::array<unsigned, 3>*>(
        rtcSetNewGeometryBuffer(mesh, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3,
                                sizeof(std::array<unsigned, 3>), ball.faces.size()));
    std::copy(ball.faces.begin(), ball.faces.end(), faces);
    tests::attach(device, scene, mesh);
}

/// `kind` other than spheres: the ball is made larger until its mean outline has the sphere's area.
struct EmbreeRoom {
    tests::EmbreeScene ball;  ///< what instances refer to
    tests::EmbreeScene scene;
};

inline EmbreeRoom embree_room(RTCDevice device, const tests::SeatedRoom& room, HeadsAs kind) {
    EmbreeRoom out;
    if (kind == HeadsAs::spheres) {
        out.scene = tests::embree_scene(device, room);
        return out;
    }
    out.scene.reset(rtcNewScene(device));
    rtcSetSceneBuildQuality(out.scene.get(), RTC_BUILD_QUALITY_HIGH);
    const Ball ball = ball_of_80();
    const double squeeze = tests::squeeze_of(room);
    // Cauchy: the mean outline of a convex body is a quarter of its surface.
    double surface = 0.0;
    for (const auto& f : ball.faces) {
        surface += 0.5 * glm::length(glm::cross(ball.points[f[1]] - ball.points[f[0]],
                                                ball.points[f[2]] - ball.points[f[0]]));
    }
    const double larger = std::sqrt(4.0 * std::numbers::pi / surface);
    Ball all;
    if (kind == HeadsAs::instances) {
        out.ball.reset(rtcNewScene(device));
        rtcSetSceneBuildQuality(out.ball.get(), RTC_BUILD_QUALITY_HIGH);
        add_mesh(device, out.ball.get(), ball);
        rtcCommitScene(out.ball.get());
    }
    for (const sight::Head& head : room.heads) {
        const auto c = tests::squeezed(head.centre, squeeze);
        const auto r = static_cast<float>(head.radius_m * larger);
        if (kind == HeadsAs::instances) {
            RTCGeometry instance = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_INSTANCE);
            rtcSetGeometryInstancedScene(instance, out.ball.get());
            const float matrix[12] = {r, 0, 0, 0, r, 0, 0, 0, r, c.x, c.y, c.z};
            rtcSetGeometryTransform(instance, 0, RTC_FORMAT_FLOAT3X4_COLUMN_MAJOR, matrix);
            tests::attach(device, out.scene.get(), instance);
            continue;
        }
        const auto at = static_cast<unsigned>(all.points.size());
        for (const glm::dvec3& p : ball.points) {
            all.points.push_back(glm::dvec3(c.x, c.y, c.z) + static_cast<double>(r) * p);
        }
        for (const auto& f : ball.faces)
            all.faces.push_back({at + f[0], at + f[1], at + f[2]});
    }
    if (kind == HeadsAs::triangles) add_mesh(device, out.scene.get(), all);
    rtcCommitScene(out.scene.get());
    return out;
}

/// The rays' ends in an order that keeps the 16 of a packet together: squares of 4 by 4.
inline tests::RayEnds packed_ends(const tests::RayGrid& grid, double squeeze) {
    tests::RayGrid squares{grid.across, grid.up, {}};
    for (int left = 0; left < grid.across; left += 4) {
        for (int low = 0; low < grid.up; low += 4) {
            for (int k = 0; k < 16; ++k) {
                const int at = (left + k / 4) * grid.up + low + k % 4;
                squares.points.push_back(grid.points[static_cast<std::size_t>(at)]);
            }
        }
    }
    return tests::ray_ends(squares, squeeze);
}

/// As tests::hidden_rays with nothing done twice: whole packets, one start for all rays, outside
/// the own head (the screen is flat, so no ray is shorter than the eye's depth, nor reaches a
/// neighbour).
inline std::size_t paced_rays(RTCScene scene,
                              const tests::RayEnds& ends,
                              const tests::EmbreePoint& eye,
                              float own_radius) {
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    context.flags = RTC_INTERSECT_CONTEXT_FLAG_COHERENT;
    alignas(64) RTCRay16 rays{};
    alignas(64) int valid[tests::kPacket];
    for (int k = 0; k < tests::kPacket; ++k) {
        valid[k] = -1;
        rays.org_x[k] = eye.x;
        rays.org_y[k] = eye.y;
        rays.org_z[k] = eye.z;
        rays.tnear[k] = 1.001F * own_radius / eye.z;
        rays.mask[k] = ~0U;
    }
    std::size_t hidden = 0;
    for (std::size_t at = 0; at < ends.x.size(); at += tests::kPacket) {
        const float* x = ends.x.data() + at;
        const float* y = ends.y.data() + at;
        const float* z = ends.z.data() + at;
#pragma GCC unroll 16
        for (int k = 0; k < tests::kPacket; ++k) {
            rays.dir_x[k] = x[k] - eye.x;
            rays.dir_y[k] = y[k] - eye.y;
            rays.dir_z[k] = z[k] - eye.z;
            rays.tfar[k] = 0.9999F;
        }
        rtcOccluded16(valid, scene, &context, &rays);
        int met = 0;
        for (int k = 0; k < tests::kPacket; ++k)
            met += rays.tfar[k] < 0.0F ? 1 : 0;
        hidden += static_cast<std::size_t>(met);
    }
    return hidden;
}

/// All seats on one or two threads; the ray ends are made beforehand.
inline std::vector<double> embree_all(const tests::SeatedRoom& room,
                                      RTCScene scene,
                                      const tests::RayEnds& ends,
                                      float own_reach,
                                      unsigned threads) {
    std::vector<double> out(room.eyes.size());
    const double squeeze = tests::squeeze_of(room);
    const auto some = [&](std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end; ++i) {
            const auto own = own_reach * static_cast<float>(room.heads[i].radius_m);
            const auto hidden =
                paced_rays(scene, ends, tests::squeezed(room.eyes[i], squeeze), own);
            out[i] = static_cast<double>(hidden) / static_cast<double>(ends.x.size());
        }
    };
    if (threads == 1) {
        some(0, out.size());
        return out;
    }
    std::jthread other(some, 0, out.size() / 2);
    some(out.size() / 2, out.size());
    other.join();
    return out;
}

}  // namespace rakeline::bench
