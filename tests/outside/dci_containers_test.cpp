// SPDX-License-Identifier: MIT
// Sources: DCI Digital Cinema System Specification 4.3 (containers; SMPTE ST 428-1) and DCI
// Compliance Test Plan, annex A (flat and scope pattern sizes). Chip pitches are from memory, as
// the trade gives them with the sizes and inch names that they multiply to.
#include "base/units.hpp"
#include "outside/projected_aspect.hpp"

#include <array>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

struct Picture {
    const char* source;
    int wide;
    int high;
    double aspect;
    int decimals;  ///< as printed
};

constexpr std::array<Picture, 6> kPictures{{
    {"DCSS 4.3, 2K container", 2048, 1080, 1.8963, 4},
    {"DCSS 4.3, 4K container", 4096, 2160, 1.8963, 4},
    {"CTP annex A, 2K flat", 1998, 1080, 1.8500, 4},
    {"4K flat (width from memory)", 3996, 2160, 1.8500, 4},
    {"CTP annex A, 2K scope", 2048, 858, 2.38695, 5},
    {"4K scope (height from memory)", 4096, 1716, 2.38695, 5},
}};

struct Chip {
    double pitch_um;
    int wide;
    int high;
    double width_mm;  ///< printed with two decimals
    double height_mm;
    double diagonal_in;  ///< printed with three decimals
};

constexpr std::array<Chip, 6> kChips{{
    {13.68, 2048, 1080, 28.02, 14.77, 1.247},
    {10.8, 2048, 1080, 22.12, 11.66, 0.984},
    {7.56, 4096, 2160, 30.97, 16.33, 1.378},
    {5.4, 4096, 2160, 22.12, 11.66, 0.984},
    {7.56, 2048, 1080, 15.48, 8.16, 0.689},
    {8.5, 4096, 2160, 34.82, 18.36, 1.550},
}};

picture::ProjectedPicture shown(double pitch_m, int wide, int high) {
    room::Projector projector;
    projector.kind = room::SourceKind::digital;
    projector.imager.pixel_pitch_m = pitch_m;
    room::FormatUse use;
    use.pixels_wide = wide;
    use.pixels_high = high;
    return square_on_picture(projector, use);
}

}  // namespace

TEST_SUITE("outside/dci_containers") {
    TEST_CASE("golden: square-on, the pixels in use make a picture of their ratio") {
        for (const Picture& p : kPictures) {
            INFO(p.source);
            check_close(projected_aspect(shown(13.68e-6, p.wide, p.high)), p.aspect,
                        printed_digits(p.decimals));
        }
    }

    TEST_CASE("golden: pixels times pitch is the chip's published size") {
        for (const Chip& c : kChips) {
            INFO(c.pitch_um, " um, ", c.wide, " x ", c.high);
            const glm::dvec2 size = shown(1e-6 * c.pitch_um, c.wide, c.high).gate_size_m;
            check_close(1e3 * size.x, c.width_mm, printed_digits(2));
            check_close(1e3 * size.y, c.height_mm, printed_digits(2));
            check_close(glm::length(size) / base::kMetresPerInch, c.diagonal_in, printed_digits(3));
        }
    }
}
