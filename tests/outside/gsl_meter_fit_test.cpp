// SPDX-License-Identifier: MIT
// Source: GNU Scientific Library: weighted linear least squares (gsl_multifit_wlinear) with its
// covariance, the chi-square distribution (gsl_cdf_chisq_Q), and adaptive quadrature (QAG) as the
// references for the fit of meter readings.
#include "light/illuminance.hpp"
#include "light/metered_room.hpp"
#include "light/screen_gain.hpp"
#include "support/check.hpp"

#include <functional>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_multifit.h>

using namespace rakeline;
using tests::check_close;
using tests::LitRoom;

namespace {

/// A square imager wholly in use on a square screen, square on: with the place (x, y) in half
/// widths, the reading is b0 - b1 (x^2 + y^2) / 2 + b2 x + b3 y, linear in b.
LitRoom square_room() {
    LitRoom r = tests::square_on_film_room(8.0, 1.0);
    r.projector.flux.measured_flux_lm = 16000.0;
    r.projector.flux.corner_fraction = 0.65;
    r.projector.flux.hot_spot_across = 0.06;
    r.projector.flux.hot_spot_up = -0.04;
    return r;
}

struct LinearFit {
    std::array<double, 4> b{};
    std::array<std::array<double, 4>, 4> covariance{};
    double chi_square = 0.0;
};

LinearFit gsl_fit(const std::vector<light::MeterReading>& readings,
                  glm::dvec2 centre,
                  double half) {
    const std::size_t n = readings.size();
    gsl_matrix* design = gsl_matrix_alloc(n, 4);
    gsl_vector* values = gsl_vector_alloc(n);
    gsl_vector* weights = gsl_vector_alloc(n);
    gsl_vector* found = gsl_vector_alloc(4);
    gsl_matrix* covariance = gsl_matrix_alloc(4, 4);
    for (std::size_t i = 0; i < n; ++i) {
        const glm::dvec2 at = (readings[i].uv - centre) / half;
        const std::array<double, 4> row{1.0, -0.5 * glm::dot(at, at), at.x, at.y};
        for (std::size_t j = 0; j < 4; ++j)
            gsl_matrix_set(design, i, j, row[j]);
        gsl_vector_set(values, i, readings[i].value);
        gsl_vector_set(weights, i, 1.0 / (readings[i].error * readings[i].error));
    }
    LinearFit out;
    gsl_multifit_linear_workspace* workspace = gsl_multifit_linear_alloc(n, 4);
    gsl_multifit_wlinear(design, weights, values, found, covariance, &out.chi_square, workspace);
    for (std::size_t i = 0; i < 4; ++i) {
        out.b[i] = gsl_vector_get(found, i);
        for (std::size_t j = 0; j < 4; ++j)
            out.covariance[i][j] = gsl_matrix_get(covariance, i, j);
    }
    gsl_multifit_linear_free(workspace);
    gsl_matrix_free(covariance);
    gsl_vector_free(found);
    gsl_vector_free(weights);
    gsl_vector_free(values);
    gsl_matrix_free(design);
    return out;
}

/// What the linear numbers mean, worked by hand for this room: with the peak p at (hx, hy) half
/// widths and p (1 - c) r^2 / 2 lost at r half widths, b = (p - b1 h^2/2, p (1 - c), b1 hx, b1 hy).
/// The flux is the integral of the readings' luminance times pi over the screen:
/// Phi = pi (2 half)^2 (b0 - b1 / 3), the mean of (x^2 + y^2) / 2 being 1/3.
std::array<double, 4> meant(const LinearFit& fit, double half) {
    const auto& b = fit.b;
    const glm::dvec2 h{b[2] / b[1], b[3] / b[1]};
    const double peak = b[0] + 0.5 * b[1] * glm::dot(h, h);
    return {base::kPi * 4.0 * half * half * (b[0] - b[1] / 3.0), 1.0 - b[1] / peak, 0.5 * h.x,
            0.5 * h.y};
}

/// Errors by the derivatives of meant(), by differences.
std::array<double, 4> errors_of(const LinearFit& fit, double half) {
    std::array<std::array<double, 4>, 4> slope{};
    for (std::size_t j = 0; j < 4; ++j) {
        LinearFit low = fit, high = fit;
        low.b[j] -= 1e-4;
        high.b[j] += 1e-4;
        for (std::size_t i = 0; i < 4; ++i)
            slope[i][j] = (meant(high, half)[i] - meant(low, half)[i]) / 2e-4;
    }
    std::array<double, 4> out{};
    for (std::size_t i = 0; i < 4; ++i) {
        double sum = 0.0;
        for (std::size_t j = 0; j < 4; ++j)
            for (std::size_t k = 0; k < 4; ++k)
                sum += slope[i][j] * fit.covariance[j][k] * slope[i][k];
        out[i] = std::sqrt(sum);
    }
    return out;
}

double call(double x, void* function) {
    return (*static_cast<const std::function<double(double)>*>(function))(x);
}

double integral(double from, double to, const std::function<double(double)>& f) {
    gsl_integration_workspace* workspace = gsl_integration_workspace_alloc(500);
    std::function<double(double)> copy = f;
    gsl_function function{&call, &copy};
    double result = 0.0, error = 0.0;
    gsl_integration_qag(&function, from, to, 1e-12, 1e-9, 500, GSL_INTEG_GAUSS21, workspace,
                        &result, &error);
    gsl_integration_workspace_free(workspace);
    return result;
}

/// Mean luminance over a cone of directions about the reading's, by a double integral over angle
/// from its axis and turn about it.
double mean_over_cone(const LitRoom& r, const light::MeterReading& reading) {
    const light::MeterScene scene = tests::scene_of(r);
    const light::Illuminance illuminance(
        {scene.map, scene.gate, scene.part_size_m, scene.lens_flux_lm * scene.passed_fraction});
    const glm::dvec3 axis =
        glm::normalize(geometry::point_at(scene.map.surface(), reading.uv) - reading.eye);
    const glm::dvec3 side = glm::normalize(glm::cross(glm::dvec3(0.3, 0.9, 0.1), axis));
    const glm::dvec3 rise = glm::cross(side, axis);
    const auto luminance = [&](double off, double turn) {
        const glm::dvec3 direction =
            std::cos(off) * axis + std::sin(off) * (std::cos(turn) * side + std::sin(turn) * rise);
        const auto hit = geometry::front_hit(scene.map.surface(), {reading.eye, direction});
        const glm::dvec3 place = geometry::point_at(scene.map.surface(), hit->uv);
        return illuminance.at_lx(hit->uv) / base::kPi *
               light::gain(scene.surface, 0.0, glm::normalize(place - scene.map.pose().lens),
                           -direction, geometry::normal_at(scene.map.surface(), hit->uv));
    };
    const double half = 0.5 * reading.spot_rad;
    const double sum = integral(0.0, half, [&](double off) {
        return std::sin(off) *
               integral(0.0, 2.0 * base::kPi, [&](double turn) { return luminance(off, turn); });
    });
    return sum / (2.0 * base::kPi * (1.0 - std::cos(half)));
}

}  // namespace

TEST_SUITE("outside/gsl_meter_fit") {
    TEST_CASE("golden: the fit and its errors are those of weighted linear least squares") {
        std::mt19937 random(611);
        std::normal_distribution<double> normal(0.0, 1.0);
        const LitRoom truth = square_room();
        const geometry::Rectangle opening = tests::scene_of(truth).opening;
        for (int i = 0; i < 20; ++i) {
            auto readings = tests::studied_readings(truth);
            for (std::size_t n = 0; n < readings.size(); ++n) {
                readings[n].error *= n % 3 ? 1.0 : 2.0;
                readings[n].value += readings[n].error * normal(random);
            }
            const LinearFit reference = gsl_fit(readings, opening.centre(), 0.5 * opening.width());
            const auto values = meant(reference, 0.5 * opening.width());
            const auto errors = errors_of(reference, 0.5 * opening.width());
            const light::MeterFit fit =
                light::fit_meter(tests::scene_of(tests::unfitted(truth)), readings);
            check_close(fit.chi_square, reference.chi_square,
                        tests::relative(1e-8, "two least squares solved to rounding"));
            for (std::size_t j = 0; j < 4; ++j) {
                INFO("case ", i, ", part ", j);
                check_close(fit.parts[j].value, values[j], {1e-8, 1e-8, "rounding"});
                REQUIRE(fit.parts[j].error);
                check_close(*fit.parts[j].error, errors[j],
                            tests::relative(1e-6, "derivatives by differences"));
            }
        }
    }

    TEST_CASE("golden: the chance of a chi-square") {
        for (int freedom = 1; freedom <= 40; ++freedom) {
            for (const double x : {0.0, 1e-6, 0.3, 1.0, 4.7, 12.0, 40.0, 90.0}) {
                INFO("freedom ", freedom, ", chi-square ", x);
                check_close(light::chi_square_chance(x, freedom), gsl_cdf_chisq_Q(x, freedom),
                            {1e-300, 1e-12, "a sum of positive terms"});
            }
        }
    }

    TEST_CASE("golden: the mean over a meter's spot is the double integral over its cone") {
        std::mt19937 random(612);
        for (const bool lobe : {false, true}) {
            for (int i = 0; i < 3; ++i) {
                LitRoom r = tests::metered_room(random);
                if (lobe) r.screen.surface = tests::random_lobe(random);
                const auto scene = tests::scene_of(r);
                light::MeterReading reading = tests::studied_readings(r).front();
                reading.uv += 0.1 * glm::dvec2(scene.opening.width(), scene.opening.height());
                reading.spot_rad = base::radians(2.0);
                const auto sample = light::meter_sample(scene, reading);
                CHECK(sample.dark_share == 0.0);
                const double here = light::modelled(
                    sample, {1.0, r.projector.flux.corner_fraction,
                             r.projector.flux.hot_spot_across, r.projector.flux.hot_spot_up});
                check_close(here, mean_over_cone(r, reading),
                            tests::relative(1e-8, "the reference's goal of 1e-9 inside and out"));
            }
        }
    }

    TEST_CASE("golden: masking in half of a spot takes half of its light") {
        LitRoom r = tests::square_on_film_room(8.0, 1.85);
        const auto scene = tests::scene_of(r);
        light::MeterReading reading = tests::studied_readings(r).front();
        const double whole = reading.value;
        reading.eye.y = geometry::point_at(scene.map.surface(), scene.opening.centre()).y;
        reading.eye.x = scene.opening.right;
        reading.uv = {scene.opening.right, scene.opening.centre().y};
        reading.spot_rad = base::radians(2.0);
        const auto sample = light::meter_sample(scene, reading);
        check_close(sample.dark_share, 0.5, tests::absolute(0.002, "nodes on either side"));
        check_close(light::modelled(sample, {1.0, 1.0, 0.0, 0.0}), 0.5 * whole,
                    tests::relative(0.004, "nodes on either side"));
    }
}
