// SPDX-License-Identifier: MIT
// The illuminance on the screen against light followed ray by ray: no Jacobian, no map, only where
// the rays land.
#include "light/illuminance.hpp"
#include "light/lit_room.hpp"
#include "light/opening_flux.hpp"
#include "light/quadrature.hpp"
#include "support/check.hpp"

#include <random>
#include <vector>

using namespace rakeline;
using tests::LitRoom;

namespace {

constexpr int kAcross = 8;
constexpr int kHigh = 6;
constexpr int kRays = 1000000;

/// The screen by its own equation, without geometry/patch: a plane leaning back by the tilt, or a
/// cylinder of radius R about an axis along the leaning height.
struct PlainScreen {
    glm::dvec3 centre{0.0};
    glm::dvec3 up{0.0};
    glm::dvec3 normal{0.0};
    double radius = 0.0;

    explicit PlainScreen(const room::Screen& s)
        : centre(0.0, s.sill_m + 0.5 * s.height_m, s.setback_m),
          up(0.0, std::cos(s.tilt_rad), -std::sin(s.tilt_rad)),
          normal(0.0, std::sin(s.tilt_rad), std::cos(s.tilt_rad)),
          radius(s.radius_m) {}

    /// Where a ray lands, unrolled about the centre: along the arc, and up.
    glm::dvec2 landed(const glm::dvec3& from, const glm::dvec3& way) const {
        const glm::dvec3 p = from - centre;
        const double depth = glm::dot(p, normal);
        const double sink = glm::dot(way, normal);
        if (radius == 0.0) {
            const glm::dvec3 at = p - depth / sink * way;
            return {at.x, glm::dot(at, up)};
        }
        // x^2 + (n - R)^2 = R^2; the light comes from inside: the farther root.
        const double n = depth - radius;
        const double a = way.x * way.x + sink * sink;
        const double b = p.x * way.x + n * sink;
        const double c = p.x * p.x + n * n - radius * radius;
        const glm::dvec3 at = p + (std::sqrt(b * b - a * c) - b) / a * way;
        return {radius * std::atan2(at.x, radius - glm::dot(at, normal)), glm::dot(at, up)};
    }
};

/// What one picture's rays make of its opening.
struct Landed {
    std::vector<double> cells = std::vector<double>(std::size_t{kAcross} * kHigh, 0.0);
    double masked = 0.0;   ///< beside the opening
    double stopped = 0.0;  ///< at the gate, outside the part in use
};

class LightTrace {
public:
    LightTrace(const LitRoom& room, unsigned seed)
        : room_(room), screen_(room.screen), study_(tests::picture_of(room)), random_(seed) {}

    /// Shares of the light that leaves the lens with the whole lit gate in use.
    Landed run() {
        Landed out;
        for (int i = 0; i < kRays; ++i)
            follow(gate_place(), out);
        for (double& cell : out.cells)
            cell /= kRays;
        out.masked /= kRays;
        out.stopped /= kRays;
        return out;
    }

    const picture::PictureStudy& study() const { return study_; }
    const picture::ProjectedPicture& picture() const { return study_.pictures.front(); }

private:
    /// By rejection: as many rays as the gate is bright there.
    glm::dvec2 gate_place() {
        const light::GateLight gate = light::gate_light(room_.projector);
        for (;;) {
            const glm::dvec2 at = gate.lit_size_m * glm::dvec2(unit_(random_) - 0.5,  //
                                                               unit_(random_) - 0.5);
            if (unit_(random_) < light::relative_illuminance(gate, at)) return at;
        }
    }

    void follow(glm::dvec2 gate, Landed& out) const {
        const glm::dvec2 half = 0.5 * picture().gate_size_m;
        if (std::abs(gate.x) > half.x || std::abs(gate.y) > half.y) {
            out.stopped += 1.0;
            return;
        }
        // The film stands upside down behind the lens; the ray runs through the lens's middle.
        const picture::Pose& pose = picture().map.pose();
        const glm::dvec2 at = gate + pose.shift_m;
        const glm::dvec3 film =
            pose.lens - pose.image_distance_m * pose.axis - at.x * pose.right - at.y * pose.up;
        land(screen_.landed(pose.lens, pose.lens - film), out);
    }

    void land(glm::dvec2 uv, Landed& out) const {
        const geometry::Rectangle& o = study_.openings.front().uv;
        const double across = kAcross * (uv.x - o.left) / o.width();
        const double high = kHigh * (uv.y - o.bottom) / o.height();
        if (across < 0.0 || across >= kAcross || high < 0.0 || high >= kHigh)
            out.masked += 1.0;
        else
            out.cells[static_cast<std::size_t>(static_cast<int>(high) * kAcross +
                                               static_cast<int>(across))] += 1.0;
    }

    LitRoom room_;
    PlainScreen screen_;
    picture::PictureStudy study_;
    std::mt19937 random_;
    std::uniform_real_distribution<double> unit_{0.0, 1.0};
};

/// The illuminance summed over a cell of the opening.
double cell_flux(const light::Illuminance& illuminance, const geometry::Rectangle& o, int cell) {
    const glm::dvec2 half(0.5 * o.width() / kAcross, 0.5 * o.height() / kHigh);
    const glm::dvec2 middle =
        glm::dvec2(o.left, o.bottom) +
        half * glm::dvec2(1.0 + 2.0 * (cell % kAcross), 1.0 + 2.0 * (cell / kAcross));
    return half.x * half.y * tests::square_integral(1, [&](double s, double t) {
               return illuminance.at_lx(middle + half * glm::dvec2(s, t));
           });
}

}  // namespace

TEST_SUITE("light/light_trace") {
    TEST_CASE("property: rays traced one by one land as the illuminance says, masking and all") {
        std::mt19937 random(4711);
        for (unsigned i = 0; i < 6; ++i) {
            LitRoom r = tests::random_room(random);
            const double wanted = tests::picture_of(r).pictures.front().focal_length_m;
            r.projector.formats.front().focal_length_m = 0.75 * wanted;  // overfills
            LightTrace trace(r, 100 + i);
            REQUIRE(trace.picture().covering.value().covers());
            const light::Beam beam{.map = trace.picture().map,
                                   .gate = light::gate_light(r.projector),
                                   .part_size_m = trace.picture().gate_size_m,
                                   .whole_flux_lm = 1.0};
            const light::Illuminance lit(beam);
            const Landed landed = trace.run();
            const geometry::Rectangle opening = trace.study().openings.front().uv;
            double chi_square = 0.0;
            double sum = 0.0;
            const auto compare = [&](double expected, double share) {
                chi_square += kRays * (share - expected) * (share - expected) / expected;
                sum += share;
            };
            for (int cell = 0; cell < kAcross * kHigh; ++cell)
                compare(cell_flux(lit, opening, cell),
                        landed.cells[static_cast<std::size_t>(cell)]);
            const double used =
                light::use_fraction(light::gate_light(r.projector), trace.picture().gate_size_m);
            compare(used - light::flux_onto(beam, opening), landed.masked);
            if (used < 1.0) compare(1.0 - used, landed.stopped);
            tests::check_close(sum, 1.0, tests::relative(1e-12, "every ray is counted once"));
            // 48 cells, masking and gate: chi-square of 49 or 48 degrees has mean 49 and standard
            // deviation 9.9. Four of these above: once in some thousand seeds.
            INFO("room ", i, ", radius ", r.screen.radius_m, ", chi-square ", chi_square);
            CHECK(chi_square < 49.0 + 4.0 * 9.9);
            CHECK(chi_square > 49.0 - 4.0 * 9.9);
        }
    }
}
