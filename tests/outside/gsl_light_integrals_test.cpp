// SPDX-License-Identifier: MIT
// Source: GNU Scientific Library, adaptive 61-point quadrature (QAG), as the reference for the
// integrals of light: the reflectance of a gain lobe, the flux through a part of the gate, and the
// flux that falls into an opening and onto the masking round it.
#include "base/units.hpp"
#include "light/gate_light.hpp"
#include "light/illuminance.hpp"
#include "light/lit_room.hpp"
#include "light/screen_gain.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <gsl/gsl_integration.h>
#include <optional>
#include <random>
#include <span>

using namespace rakeline;
using tests::check_close;

namespace {

double call(double x, void* function) {
    return (*static_cast<const std::function<double(double)>*>(function))(x);
}

struct Bounds {
    double from = 0.0;
    double to = 0.0;
};

/// How far off the result may be: by so much, or by that share of it.
struct Goal {
    double absolute = 1e-14;
    double relative = 1e-12;
};

double gsl_integral(Bounds bounds, const std::function<double(double)>& f, Goal goal = {}) {
    gsl_integration_workspace* workspace = gsl_integration_workspace_alloc(2000);
    std::function<double(double)> copy = f;
    gsl_function function{&call, &copy};
    double result = 0.0;
    double error = 0.0;
    const int status =
        gsl_integration_qag(&function, bounds.from, bounds.to, goal.absolute, goal.relative, 2000,
                            GSL_INTEG_GAUSS61, workspace, &result, &error);
    gsl_integration_workspace_free(workspace);
    REQUIRE(status == 0);
    return result;
}

/// A picture on the screen, summed up row by row: the rim is a step in the illuminance, which no
/// quadrature likes, so each row is first searched for where it is lit.
class LitRows {
public:
    LitRows(const light::Illuminance& lit, const picture::PictureShape& shape)
        : lit_(lit), corners_(shape.corners) {}

    double flux(const geometry::Rectangle& r) const {
        if (r.width() <= 0.0 || r.height() <= 0.0) return 0.0;
        const auto row = [&](double v) { return row_flux({r.left, r.right}, v); };
        return gsl_integral({r.bottom, r.top}, row, {1e-3, 1e-8});
    }

private:
    double at(double u, double v) const { return lit_.at_lx({u, v}); }

    double row_flux(Bounds row, double v) const {
        const std::optional<double> inside = lit_place(row, v);
        if (!inside) return 0.0;
        const Bounds lit{at(row.from, v) > 0.0 ? row.from : rim(*inside, row.from, v),
                         at(row.to, v) > 0.0 ? row.to : rim(*inside, row.to, v)};
        return gsl_integral(lit, [&](double u) { return at(u, v); }, {1e-7, 1e-9});
    }

    /// Evenly, and ever closer to the picture's corners, where the tips of slanted edges end.
    std::optional<double> lit_place(Bounds row, double v) const {
        const double width = row.to - row.from;
        for (int i = 0; i <= 64; ++i) {
            const double u = row.from + width * i / 64.0;
            if (at(u, v) > 0.0) return u;
        }
        for (const glm::dvec2 corner : corners_) {
            for (double off = width; off > 1e-9 * width; off *= 0.5) {
                for (const double u : {corner.x - off, corner.x + off})
                    if (u > row.from && u < row.to && at(u, v) > 0.0) return u;
            }
        }
        return std::nullopt;
    }

    /// Between a lit and a dark place, by halves; the lit side.
    double rim(double lit, double dark, double v) const {
        for (int i = 0; i < 60; ++i) {
            const double middle = 0.5 * (lit + dark);
            (at(middle, v) > 0.0 ? lit : dark) = middle;
        }
        return lit;
    }

    const light::Illuminance& lit_;
    std::array<glm::dvec2, 4> corners_;
};

/// Round an opening, out to wherever the picture reaches.
std::array<geometry::Rectangle, 4> strips_round(const geometry::Rectangle& o,
                                                std::span<const glm::dvec2> outline) {
    geometry::Rectangle out = o;
    for (const glm::dvec2 at : outline) {
        // Between two points of the outline the rim may bulge a little.
        out.left = std::min(out.left, at.x - 0.01);
        out.right = std::max(out.right, at.x + 0.01);
        out.bottom = std::min(out.bottom, at.y - 0.01);
        out.top = std::max(out.top, at.y + 0.01);
    }
    return {{{out.left, o.left, out.bottom, out.top},
             {o.right, out.right, out.bottom, out.top},
             {o.left, o.right, out.bottom, o.bottom},
             {o.left, o.right, o.top, out.top}}};
}

}  // namespace

TEST_SUITE("outside/gsl_light_integrals") {
    TEST_CASE("golden: hemispherical reflectance is 2 times the integral of G sin cos") {
        for (const double peak : {0.9, 1.4, 2.4, 5.0}) {
            for (const double matte : {0.0, 0.3, 1.0}) {
                for (const double degrees : {1.0, 5.0, 16.2, 40.0, 89.0}) {
                    INFO("peak ", peak, ", matte ", matte, ", half gain at ", degrees);
                    room::ScreenSurface surface;
                    surface.lobe = room::LobeKind::retro;
                    surface.peak_gain = peak;
                    surface.matte_gain = matte;
                    surface.half_gain_angle_rad = base::radians(degrees);
                    const light::GainModel model(surface, 0.0);
                    const double reference =
                        gsl_integral({0.0, 0.5 * base::kPi}, [&](double angle) {
                            return 2.0 * model.gain_off_lobe(angle) * std::sin(angle) *
                                   std::cos(angle);
                        });
                    check_close(light::hemispherical_reflectance(surface), reference,
                                tests::relative(1e-11, "the reference's own error bound"));
                }
            }
        }
    }

    TEST_CASE("golden: the gate's lit integral in closed form, where it is clamped too") {
        std::mt19937 random(71);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 12; ++i) {
            light::GateLight light;
            light.lit_size_m = {0.02, 0.012};
            light.corner_fraction = 0.05 + 0.5 * unit(random);
            light.hot_spot_m =
                light.lit_size_m * glm::dvec2(unit(random) - 0.5, unit(random) - 0.5);
            const glm::dvec2 part = light.lit_size_m * glm::dvec2(1.0, 0.5 + 0.5 * unit(random));
            const auto along_x = [&](double y) {
                return gsl_integral({-0.5 * part.x, 0.5 * part.x}, [&](double x) {
                    return light::relative_illuminance(light, {x, y});
                });
            };
            const double reference = gsl_integral({-0.5 * part.y, 0.5 * part.y}, along_x);
            check_close(light::lit_integral_m2(light, part), reference,
                        tests::relative(1e-9, "the reference's goal, 1e-14 m^2 inside and out"));
        }
    }

    TEST_CASE("golden: flux into the opening, and with the masking's all that leaves the port") {
        const unsigned seed = 77;
        INFO("seed ", seed);
        std::mt19937 random(seed);
        double most_masked = 0.0;
        for (int i = 0; i < 8; ++i) {
            tests::LitRoom r = tests::random_room(random);
            // Some pictures larger than their opening, some as they come.
            const double wanted = tests::picture_of(r).pictures.front().focal_length_m;
            if (i % 2 == 0) r.projector.formats.front().focal_length_m = 0.93 * wanted;
            const picture::PictureStudy study = tests::picture_of(r);
            const picture::ProjectedPicture& picture = study.pictures.front();
            const light::PictureLight lit = tests::light_of(r).lights.front();
            const light::Illuminance illuminance(
                {.map = picture.map,
                 .gate = light::gate_light(r.projector),
                 .part_size_m = picture.gate_size_m,
                 .whole_flux_lm = lit.chain_flux_lm * lit.port_transmittance});
            const geometry::Rectangle opening = study.openings.front().uv;
            const LitRows rows(illuminance, picture.shape);
            const double inside = rows.flux(opening);
            double masked = 0.0;
            for (const geometry::Rectangle& strip : strips_round(opening, picture.shape.outline))
                masked += rows.flux(strip);
            INFO("room ", i, ", masked ", masked, " of ", lit.flux_lm, " lm");
            const tests::Tolerance millionth =
                tests::relative(1e-6, "of the flux through the lens");
            check_close(lit.opening_flux_lm, inside, millionth);
            check_close(inside + masked, lit.flux_lm, millionth);
            most_masked = std::max(most_masked, masked / lit.flux_lm);
        }
        CHECK(most_masked > 0.1);
    }
}
