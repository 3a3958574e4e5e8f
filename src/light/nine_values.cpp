// SPDX-License-Identifier: MIT
#include "light/nine_values.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::light {
namespace {

/// Of the three values at -1, 0, 1.
std::array<double, 3> weights(double at) {
    return {0.5 * at * (at - 1.0), 1.0 - at * at, 0.5 * at * (at + 1.0)};
}

/// slope.x x + slope.y y + bend.x x^2/2 + twist x y + bend.y y^2/2
struct Form {
    glm::dvec2 slope{0.0};
    glm::dvec2 bend{0.0};
    double twist = 0.0;

    double at(const glm::dvec2& p) const {
        return glm::dot(slope, p) + 0.5 * glm::dot(bend, p * p) + twist * p.x * p.y;
    }
};

Form form_of(const NineValues& v) {
    return {.slope = {0.5 * (v[5] - v[3]), 0.5 * (v[7] - v[1])},
            .bend = {v[5] - 2.0 * v[4] + v[3], v[7] - 2.0 * v[4] + v[1]},
            .twist = 0.25 * (v[8] - v[6] - v[2] + v[0])};
}

/// Keeps the higher of what it is shown; of two alike the first.
class Highest {
public:
    explicit Highest(const Form& form) : form_(form) {}

    void show(const glm::dvec2& place) {
        const glm::dvec2 inside = glm::clamp(place, -1.0, 1.0);
        const double height = form_.at(inside);
        if (height <= height_) return;
        height_ = height;
        place_ = inside;
    }

    const glm::dvec2& place() const { return place_; }

private:
    const Form& form_;
    glm::dvec2 place_{0.0};
    double height_ = 0.0;  ///< the form's at its middle
};

/// Along an edge where one coordinate is -1 or 1, the place where the other's slope is nothing.
void show_edges(const Form& form, Highest& highest) {
    for (const double edge : {-1.0, 1.0}) {
        const double along_x = -(form.slope.x + form.twist * edge) / form.bend.x;
        const double along_y = -(form.slope.y + form.twist * edge) / form.bend.y;
        if (form.bend.x < 0.0) highest.show({along_x, edge});
        if (form.bend.y < 0.0) highest.show({edge, along_y});
        highest.show({edge, -1.0});
        highest.show({edge, 1.0});
    }
}

}  // namespace

double through_nine(const NineValues& values, const glm::dvec2& place) {
    const auto across = weights(place.x);
    const auto up = weights(place.y);
    double sum = 0.0;
    for (std::size_t row = 0; row < 3; ++row) {
        const double* v = values.data() + 3 * row;
        sum += up[row] * (across[0] * v[0] + across[1] * v[1] + across[2] * v[2]);
    }
    return sum;
}

glm::dvec2 top_of_nine(const NineValues& values) {
    const Form form = form_of(values);
    Highest highest(form);
    const double determinant = form.bend.x * form.bend.y - form.twist * form.twist;
    if (form.bend.x < 0.0 && determinant > 0.0) {
        const glm::dvec2 top = glm::dvec2(form.twist * form.slope.y - form.bend.y * form.slope.x,
                                          form.twist * form.slope.x - form.bend.x * form.slope.y) /
                               determinant;
        if (std::abs(top.x) <= 1.0 && std::abs(top.y) <= 1.0) return top;
    }
    show_edges(form, highest);
    return highest.place();
}

}  // namespace rakeline::light
