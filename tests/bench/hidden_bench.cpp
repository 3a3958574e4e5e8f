// SPDX-License-Identifier: MIT
/// How fast the hidden picture is worked out, against Embree at equal error, in one run. Prints a
/// table; checks nothing. Truth: 65,536 rays a seat on exact spheres.
#include "bench/embree_pace.hpp"
#include "bench/hidden_edits.hpp"
#include "bench/hidden_rooms.hpp"
#include "bench/light_bench.hpp"
#include "bench/sound_bench.hpp"
#include "sight/hidden_room.hpp"

#include <cstdio>
#include <optional>

using namespace rakeline;
using namespace rakeline::bench;
using sight::hidden::InstructionSet;

namespace {

constexpr double kAllowedRms = 0.001;

const char* name_of(InstructionSet set) {
    if (set == InstructionSet::plain) return "plain";
    return set == InstructionSet::sse42 ? "SSE4.2" : "AVX2";
}

std::vector<double> ours(const tests::SeatedRoom& room, int columns, InstructionSet set) {
    const sight::HiddenInput in = room.input();
    const sight::hidden::Room ready(in, columns, set);
    std::vector<double> out(room.eyes.size());
    for (std::size_t i = 0; i < out.size(); ++i) {
        sight::hidden::SeatBlocks blocks;
        const sight::hidden::EyePlace place = ready.place(static_cast<int>(i));
        ready.blocks(place, ready.all_blocks(), false, blocks);
        out[i] = ready.summed(place, blocks).hidden_fraction;
    }
    return out;
}

/// A grid of rays, whole squares of 4 by 4.
struct Rays {
    int across = 0, up = 0;
    Errors off;
};

/// The smallest grid that is as good, from few rays to many.
std::optional<Rays> rays_for(const tests::SeatedRoom& room,
                             RTCScene scene,
                             const std::vector<double>& truth,
                             double rms) {
    int before = 0;
    for (double side = 12.0; side < 400.0; side *= 1.03) {
        const int across = 4 * static_cast<int>(std::lround(1.4 * side / 4.0));
        const int up = 4 * static_cast<int>(std::lround(side / 1.4 / 4.0));
        if (across * up <= before) continue;
        before = across * up;
        const auto ends = packed_ends(tests::ray_grid(room, across, up), tests::squeeze_of(room));
        const Errors off = errors(embree_all(room, scene, ends, 1.0F, 1), truth);
        if (off.rms <= rms) return Rays{across, up, off};
    }
    return std::nullopt;
}

struct Pace {
    double one_ms = 1e300, two_ms = 1e300;
};

Pace embree_best(RTCDevice device, const tests::SeatedRoom& room, const Rays& rays) {
    Pace best;
    const auto ends =
        packed_ends(tests::ray_grid(room, rays.across, rays.up), tests::squeeze_of(room));
    for (const HeadsAs kind : {HeadsAs::spheres, HeadsAs::instances, HeadsAs::triangles}) {
        const EmbreeRoom ready = embree_room(device, room, kind);
        const float own_reach = kind == HeadsAs::spheres ? 1.0F : 1.05F;
        const auto run = [&](double (*clock)(), unsigned threads) {
            return median_ms(
                clock, [&] { embree_all(room, ready.scene.get(), ends, own_reach, threads); }, 3,
                100.0);
        };
        const Pace pace{run(own_ms, 1), run(wall_ms, 2)};
        std::printf("    Embree %-9s %4d x %3d rays: %8.3f ms one thread, %8.3f two\n",
                    name_of(kind), rays.across, rays.up, pace.one_ms, pace.two_ms);
        best.one_ms = std::min(best.one_ms, pace.one_ms);
        best.two_ms = std::min(best.two_ms, pace.two_ms);
    }
    return best;
}

void compare(RTCDevice device, const TimedRoom& timed) {
    const tests::SeatedRoom room = tests::seated_room(timed.shape, 1);
    const tests::EmbreeScene scene = tests::embree_scene(device, room);
    const auto truth = tests::embree_hidden(room, scene.get(), tests::ray_grid(room, 512, 128));
    std::printf("\n%s, %zu seats\n", timed.name.c_str(), room.eyes.size());
    int columns = 8;
    Errors off;
    for (; columns <= 256; columns += 8) {
        off = errors(ours(room, columns, InstructionSet::plain), truth);
        if (off.rms <= kAllowedRms) break;
    }
    const Errors standard = errors(ours(room, 128, InstructionSet::plain), truth);
    std::printf("    128 columns: RMS %.4f %%, worst %.4f %%\n", 100.0 * standard.rms,
                100.0 * standard.worst);
    std::printf("    %d columns: RMS %.4f %%, worst %.4f %%\n", columns, 100.0 * off.rms,
                100.0 * off.worst);
    const auto rays = rays_for(room, scene.get(), truth, off.rms);
    if (!rays) {
        std::printf("    no grid of rays is as good\n");
        return;
    }
    const Pace embree = embree_best(device, room, *rays);
    for (const InstructionSet set : {InstructionSet::avx2, InstructionSet::sse42}) {
        if (!sight::hidden::has(set)) continue;
        const double one = median_ms(
            own_ms, [&] { ours(room, columns, set); }, 9, 100.0);
        const double fine = median_ms(
            own_ms, [&] { ours(room, 128, set); }, 9, 100.0);
        std::printf("    ours %-7s %3d columns %7.4f ms: %6.1f times as fast; 128: %7.4f ms\n",
                    name_of(set), columns, one, embree.one_ms / one, fine);
    }
    std::vector<double> out(room.eyes.size());
    const sight::HiddenSetting on_two{columns, 2};
    const double two = median_ms(
        wall_ms, [&] { sight::hidden_fractions(room.input(), on_two, out); }, 9, 100.0);
    std::printf("    ours, two threads     %7.4f ms: %6.1f times as fast as Embree on two\n", two,
                embree.two_ms / two);
}

void growth() {
    std::printf("\ngrowth, 128 columns, ms on one thread | two\n");
    struct Size {
        int rows, seats;
    };
    const std::vector<Size> sizes{{10, 15}, {20, 25}, {25, 40}, {50, 60}};
    for (std::size_t kind = 0; kind < 3; ++kind) {
        double first = 0.0;
        double last = 0.0;
        std::printf("    %-20s", rooms_of(1, 1)[kind].name.c_str());
        for (const Size& size : sizes) {
            const auto room = tests::seated_room(rooms_of(size.rows, size.seats)[kind].shape, 1);
            std::vector<double> out(room.eyes.size());
            const auto run = [&](double (*clock)(), unsigned threads) {
                const sight::HiddenSetting setting{128, threads};
                return median_ms(
                    clock, [&] { sight::hidden_fractions(room.input(), setting, out); }, 5, 100.0);
            };
            last = run(own_ms, 1);
            if (first == 0.0) first = last;
            std::printf("  %zu: %.3f | %.3f", room.eyes.size(), last, run(wall_ms, 2));
        }
        std::printf("  exponent %.2f\n", std::log(last / first) / std::log(3000.0 / 150.0));
    }
}

}  // namespace

int main() {
    const auto device = tests::embree_device();
    for (const TimedRoom& timed : rooms_of(20, 25))
        compare(device.get(), timed);
    growth();
    print_edits();
    light_pace();
    sound_pace();
}
