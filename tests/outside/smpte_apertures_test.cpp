// SPDX-License-Identifier: MIT
// Sources, each beside its row: SMPTE and ISO standards of projectable picture areas, as reported
// by the texts that reprint them; the inch sizes are the standards', the ratios what they give.
#include "base/units.hpp"
#include "outside/projected_aspect.hpp"
#include "picture/plate.hpp"

#include <array>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

struct Aperture {
    const char* source;
    double width_in;
    double height_in;
    double squeeze;
    double aspect;
    int decimals;  ///< as printed
};

constexpr std::array<Aperture, 9> kApertures{{
    {"SMPTE ST 195 / ISO 2907, 35 mm 1.37", 0.825, 0.602, 1.0, 1.3704, 4},
    {"SMPTE ST 195 / ISO 2907, 35 mm 1.66", 0.825, 0.497, 1.0, 1.6600, 4},
    {"SMPTE ST 195 / ISO 2907, 35 mm 1.85", 0.825, 0.446, 1.0, 1.8498, 4},
    {"SMPTE ST 195-1993, 35 mm anamorphic", 0.825, 0.690, 2.0, 2.3913, 4},
    {"PH22.106-1971, 35 mm anamorphic", 0.838, 0.700, 2.0, 2.394, 3},
    {"PH22.106-1957, 35 mm anamorphic", 0.839, 0.715, 2.0, 2.347, 3},
    {"exhibitor booklet of 1953, 35 mm anamorphic", 0.912, 0.715, 2.0, 2.551, 3},
    {"SMPTE 152 / ISO 2467, 70 mm (inch pair from memory)", 1.912, 0.870, 1.0, 2.1977, 4},
    {"SMPTE 233 / ISO 359, 16 mm (inch pair from memory)", 0.380, 0.284, 1.0, 1.338, 3},
}};

picture::ProjectedPicture shown(const Aperture& a) {
    room::Projector projector;
    projector.kind = room::SourceKind::film;
    room::FormatUse use;
    use.gate_width_m = a.width_in * base::kMetresPerInch;
    use.gate_height_m = a.height_in * base::kMetresPerInch;
    use.squeeze = a.squeeze;
    return square_on_picture(projector, use);
}

}  // namespace

TEST_SUITE("outside/smpte_apertures") {
    TEST_CASE("golden: square-on, an aperture's picture has the ratio of its standard") {
        for (const Aperture& a : kApertures) {
            INFO(a.source);
            check_close(projected_aspect(shown(a)), a.aspect, printed_digits(a.decimals));
        }
    }

    TEST_CASE("golden: square-on, the plate of the whole picture is the aperture of its standard") {
        for (const Aperture& a : kApertures) {
            INFO(a.source);
            const auto p = shown(a);
            const auto& c = p.shape.corners;
            const picture::Opening whole{
                .uv = {.left = c[3].x, .right = c[1].x, .bottom = c[3].y, .top = c[1].y},
                .width_m = c[1].x - c[3].x,
                .height_m = c[1].y - c[3].y};
            const auto plate = picture::plate_outline({.picture = p, .opening = whole});
            REQUIRE(plate);
            REQUIRE(plate->outline_m.size() == 4);
            const glm::dvec2 size_in =
                (plate->outline_m[2] - plate->outline_m[0]) / base::kMetresPerInch;
            const Tolerance exact = relative(1e-12, "the standard's own size, to rounding");
            check_close(size_in.x, a.width_in, exact);
            check_close(size_in.y, a.height_in, exact);
        }
    }

    TEST_CASE("golden: the default film gate is the current anamorphic aperture in millimetres") {
        // 0.825 x 0.690 in = 20.955 x 17.526 mm; 41.910 mm wide when unsqueezed.
        room::Projector projector;
        projector.kind = room::SourceKind::film;
        room::FormatUse use;
        use.squeeze = 2.0;
        const auto p = square_on_picture(projector, use);
        check_close(1e3 * p.gate_size_m.x, 20.955, printed_digits(3));
        check_close(1e3 * p.gate_size_m.y, 17.526, printed_digits(3));
        check_close(1e3 * p.map.pose().squeeze * p.gate_size_m.x, 41.910, printed_digits(3));
        check_close(projected_aspect(p), 2.3913, printed_digits(4));
    }
}
