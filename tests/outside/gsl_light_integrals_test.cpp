// SPDX-License-Identifier: MIT
// Source: GNU Scientific Library, adaptive 61-point quadrature (QAG), as the reference for the
// integrals of light: the reflectance of a gain lobe and the flux through a part of the gate.
#include "base/units.hpp"
#include "light/gate_light.hpp"
#include "light/screen_gain.hpp"
#include "support/check.hpp"

#include <functional>
#include <gsl/gsl_integration.h>
#include <random>

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

double gsl_integral(Bounds bounds, const std::function<double(double)>& f) {
    gsl_integration_workspace* workspace = gsl_integration_workspace_alloc(2000);
    std::function<double(double)> copy = f;
    gsl_function function{&call, &copy};
    double result = 0.0;
    double error = 0.0;
    const int status = gsl_integration_qag(&function, bounds.from, bounds.to, 1e-14, 1e-12, 2000,
                                           GSL_INTEG_GAUSS61, workspace, &result, &error);
    gsl_integration_workspace_free(workspace);
    REQUIRE(status == 0);
    return result;
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
}
