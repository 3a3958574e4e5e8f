// SPDX-License-Identifier: MIT
#include "light/meter_solve.hpp"

#include "base/assert.hpp"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>
#include <unsupported/Eigen/NonLinearOptimization>

/// Linear algebra and the search are Eigen's; what is ours is which parts are free.
namespace rakeline::light {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;
using Free = std::array<bool, kLawParts>;

/// Columns that add less than this of themselves to the others are taken to add nothing.
constexpr double kRankFloor = 1e-7;

/// Weighted moments, a row a reading.
MatrixXd weighted_moments(const MeterData& data) {
    MatrixXd out(static_cast<Index>(data.samples.size()), Index{kLawParts});
    for (std::size_t i = 0; i < data.samples.size(); ++i) {
        const auto row = moments(data.samples[i]);
        for (std::size_t j = 0; j < kLawParts; ++j)
            out(static_cast<Index>(i), static_cast<Index>(j)) = row[j] / data.errors[i];
    }
    return out;
}

VectorXd weighted_values(const MeterData& data) {
    VectorXd out(static_cast<Index>(data.values.size()));
    for (std::size_t i = 0; i < data.values.size(); ++i)
        out(static_cast<Index>(i)) = data.values[i] / data.errors[i];
    return out;
}

/// The law of the linear numbers; nothing where they describe no peak.
std::optional<GateLaw> law_of(const Eigen::Vector4d& b, glm::dvec2 axes) {
    if (b(kCorner) == 0.0) return std::nullopt;
    const double across = b(kAcross) / (2.0 * b(kCorner) * axes.x);
    const double up = b(kUp) / (2.0 * b(kCorner) * axes.y);
    const double peak = b(kPeak) + b(kCorner) * (axes.x * across * across + axes.y * up * up);
    if (!(peak > 0.0)) return std::nullopt;
    return GateLaw{peak, 1.0 - b(kCorner) / peak, across, up};
}

/// What Eigen's search asks for: residuals and derivatives in the free parts.
struct Residuals {
    using Scalar = double;
    enum { InputsAtCompileTime = Eigen::Dynamic, ValuesAtCompileTime = Eigen::Dynamic };
    using InputType = VectorXd;
    using ValueType = VectorXd;
    using JacobianType = MatrixXd;

    const MeterData& data;
    GateLaw base;
    std::vector<std::size_t> parts;

    int inputs() const { return static_cast<int>(parts.size()); }
    int values() const { return static_cast<int>(data.samples.size()); }

    GateLaw law(const VectorXd& x) const {
        GateLaw out = base;
        for (std::size_t j = 0; j < parts.size(); ++j)
            out[parts[j]] = x(static_cast<Index>(j));
        return out;
    }
    VectorXd start() const {
        VectorXd x(static_cast<Index>(parts.size()));
        for (std::size_t j = 0; j < parts.size(); ++j)
            x(static_cast<Index>(j)) = base[parts[j]];
        return x;
    }
    int operator()(const VectorXd& x, VectorXd& off) const {
        const GateLaw at = law(x);
        for (std::size_t i = 0; i < data.samples.size(); ++i)
            off(static_cast<Index>(i)) =
                (modelled(data.samples[i], at) - data.values[i]) / data.errors[i];
        return 0;
    }
    int df(const VectorXd& x, MatrixXd& slope) const {
        const GateLaw at = law(x);
        for (std::size_t i = 0; i < data.samples.size(); ++i) {
            const GateLaw row = modelled_slope(data.samples[i], at);
            for (std::size_t j = 0; j < parts.size(); ++j)
                slope(static_cast<Index>(i), static_cast<Index>(j)) =
                    row[parts[j]] / data.errors[i];
        }
        return 0;
    }
};

struct Found {
    GateLaw law{};
    double chi_square = std::numeric_limits<double>::infinity();
};

std::vector<std::size_t> parts_of(const Free& free) {
    std::vector<std::size_t> out;
    for (std::size_t j = 0; j < kLawParts; ++j)
        if (free[j]) out.push_back(j);
    return out;
}

double chi_square(const MeterData& data, const GateLaw& law) {
    double sum = 0.0;
    for (std::size_t i = 0; i < data.samples.size(); ++i)
        sum += std::pow((modelled(data.samples[i], law) - data.values[i]) / data.errors[i], 2);
    return sum;
}

Found searched(const MeterData& data, const GateLaw& start, const Free& free) {
    Residuals residuals{data, start, parts_of(free)};
    if (residuals.parts.empty()) return {start, chi_square(data, start)};
    VectorXd x = residuals.start();
    Eigen::LevenbergMarquardt<Residuals> search(residuals);
    search.parameters.ftol = 1e-15;
    search.parameters.xtol = 1e-14;
    search.parameters.maxfev = 400;
    search.minimize(x);
    const GateLaw law = residuals.law(x);
    return {law, chi_square(data, law)};
}

bool within(const GateLaw& law, const Free& free) {
    for (std::size_t j = 0; j < kLawParts; ++j) {
        if (free[j] && !(law[j] >= kLawBounds[j].low && law[j] <= kLawBounds[j].high)) return false;
    }
    return true;
}

/// The peak that fits best where the rest of the law stands: it enters linearly.
GateLaw with_best_peak(const MeterData& data, GateLaw law) {
    law[kPeak] = 1.0;
    double by_model = 0.0, by_value = 0.0;
    for (std::size_t i = 0; i < data.samples.size(); ++i) {
        const double weighted = modelled(data.samples[i], law) / (data.errors[i] * data.errors[i]);
        by_model += weighted * modelled(data.samples[i], law);
        by_value += weighted * data.values[i];
    }
    if (by_model > 0.0 && by_value > 0.0) law[kPeak] = by_value / by_model;
    return law;
}

/// A place to start a search from: an even law has no peak to move, so it is bent a little.
GateLaw searchable(const MeterData& data, GateLaw law, const Free& free) {
    if (free[kCorner]) law[kCorner] = std::min(law[kCorner], 0.9);
    return free[kPeak] ? with_best_peak(data, law) : law;
}

std::vector<GateLaw> starts_of(const MeterData& data, const GateLaw& start, const Free& free) {
    std::vector<GateLaw> out{searchable(data, start, free)};
    if (!std::all_of(free.begin(), free.end(), [](bool f) { return f; })) return out;
    const Eigen::Vector4d b =
        weighted_moments(data).colPivHouseholderQr().solve(weighted_values(data));
    if (const auto law = law_of(b, data.samples.front().axes)) out.insert(out.begin(), *law);
    return out;
}

Found best_within(const MeterData& data, const GateLaw& start, const Free& free) {
    Found best;
    for (const GateLaw& from : starts_of(data, start, free)) {
        const Found found = searched(data, from, free);
        if (within(found.law, free) && found.chi_square < best.chi_square) best = found;
    }
    return best;
}

/// The choice number `choice` of free, low or high for each free part but the peak.
struct Face {
    GateLaw law{};
    Free free{};
};
Face face_of(const GateLaw& start, const Free& free, int choice) {
    Face out{start, free};
    for (std::size_t j = kCorner; j < kLawParts; ++j, choice /= 3) {
        if (!free[j] || choice % 3 == 0) continue;
        out.free[j] = false;
        out.law[j] = choice % 3 == 1 ? kLawBounds[j].low : kLawBounds[j].high;
    }
    return out;
}

/// With the corner at 1 the light is even, and where its peak stands is nothing that bounds it.
bool even(const Face& face) {
    return !face.free[kCorner] && face.law[kCorner] >= 1.0;
}

Found best_on_bounds(const MeterData& data, const GateLaw& start, const Free& free, Free& left) {
    constexpr int kChoices = 27;
    Found best;
    for (int choice = 1; choice < kChoices; ++choice) {
        Face face = face_of(start, free, choice);
        if (even(face)) face.free[kAcross] = face.free[kUp] = false;
        const Found found = best_within(data, face.law, face.free);
        if (found.chi_square < best.chi_square) {
            best = found;
            left = face.free;
        }
    }
    return best;
}

void put_states(LawFit& fit, const Free& asked, const Free& left) {
    const bool is_even = !left[kCorner] && fit.law[kCorner] >= 1.0;
    for (std::size_t j = 0; j < kLawParts; ++j) {
        const bool bound = asked[j] && (j == kCorner || !is_even);
        fit.states[j] = left[j] ? PartState::fitted : bound ? PartState::at_bound : PartState::held;
    }
}

/// (J^T J)^-1 by the singular values of J with its columns made of unit length.
void put_covariance(LawFit& fit, const MeterData& data, const Free& left) {
    const Residuals residuals{data, fit.law, parts_of(left)};
    MatrixXd slope(residuals.values(), residuals.inputs());
    residuals.df(residuals.start(), slope);
    VectorXd lengths = slope.colwise().norm();
    for (Index j = 0; j < lengths.size(); ++j) {
        if (lengths(j) > 0.0) continue;
        fit.blind = static_cast<int>(residuals.parts[static_cast<std::size_t>(j)]);
        return;
    }
    const MatrixXd scaled = slope * lengths.cwiseInverse().asDiagonal();
    const Eigen::JacobiSVD<MatrixXd> svd(scaled, Eigen::ComputeThinV);
    const VectorXd& sizes = svd.singularValues();
    if (sizes(sizes.size() - 1) < kRankFloor * sizes(0)) {
        Index weakest = 0;
        svd.matrixV().col(sizes.size() - 1).tail(sizes.size() - 1).cwiseAbs().maxCoeff(&weakest);
        fit.blind = static_cast<int>(residuals.parts[static_cast<std::size_t>(weakest + 1)]);
        return;
    }
    const MatrixXd root =
        lengths.cwiseInverse().asDiagonal() * svd.matrixV() * sizes.cwiseInverse().asDiagonal();
    const MatrixXd covariance = root * root.transpose();
    fit.covariance.emplace();
    for (std::size_t i = 0; i < residuals.parts.size(); ++i)
        for (std::size_t j = 0; j < residuals.parts.size(); ++j)
            (*fit.covariance)[residuals.parts[i]][residuals.parts[j]] =
                covariance(static_cast<Index>(i), static_cast<Index>(j));
}

}  // namespace

std::array<bool, kLawParts> telling_parts(const MeterData& data) {
    const MatrixXd all = weighted_moments(data);
    Free out{};
    MatrixXd taken(all.rows(), 0);
    for (std::size_t j = 0; j < kLawParts; ++j) {
        const VectorXd column = all.col(static_cast<Index>(j));
        VectorXd left = column;
        if (taken.cols() >= taken.rows()) continue;
        for (int twice = 0; twice < 2; ++twice)
            left -= taken * (taken.transpose() * left);
        if (!(left.norm() > kRankFloor * column.norm())) continue;
        out[j] = true;
        taken.conservativeResize(Eigen::NoChange, taken.cols() + 1);
        taken.col(taken.cols() - 1) = left.normalized();
    }
    return out;
}

LawFit fit_law(const MeterData& data, const GateLaw& start, const Free& free) {
    RL_ASSERT(!data.samples.empty() && data.samples.size() == data.values.size() &&
              data.samples.size() == data.errors.size());
    Free left = free;
    Found found = best_within(data, start, free);
    if (!std::isfinite(found.chi_square)) found = best_on_bounds(data, start, free, left);
    RL_ASSERT(std::isfinite(found.chi_square));
    LawFit out;
    out.law = found.law;
    out.chi_square = found.chi_square;
    put_states(out, free, left);
    put_covariance(out, data, left);
    return out;
}

std::optional<double> middle_dip(const MeterData& data) {
    const MatrixXd all = weighted_moments(data);
    const Free told = telling_parts(data);
    if (!std::all_of(told.begin(), told.end(), [](bool t) { return t; })) return std::nullopt;
    const Eigen::Vector4d b = all.colPivHouseholderQr().solve(weighted_values(data));
    const Eigen::Matrix4d inverse = (all.transpose() * all).inverse();
    return -b(kCorner) / std::sqrt(inverse(kCorner, kCorner));
}

}  // namespace rakeline::light
