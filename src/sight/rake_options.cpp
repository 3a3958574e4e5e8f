// SPDX-License-Identifier: MIT
#include "sight/rake.hpp"

namespace rakeline::sight {
namespace {

/// Written so that what is no number fails too.
bool within(double x, double least, double most) {
    return x >= least && x <= most;
}
bool within(const std::optional<double>& x, double least, double most) {
    return !x || within(*x, least, most);
}

}  // namespace

std::vector<OptionFault> option_faults(const RakeOptions& o) {
    std::vector<OptionFault> out;
    if (!within(o.wanted_c_m, 0.0, 0.5))
        out.push_back({"wanted_c_m", "the wanted C is out of range", "give 0 to 500 mm"});
    if (!within(o.riser_step_m, 0.001, 0.5))
        out.push_back({"riser_step_m", "the riser step is out of range", "give 1 mm to 500 mm"});
    if (o.flight_rows < 1 || o.flight_rows > 200)
        out.push_back({"flight_rows", "the rows of a flight are out of range", "give 1 to 200"});
    if (o.flights_most && (*o.flights_most < 1 || *o.flights_most > 200))
        out.push_back({"flights_most", "the number of flights is out of range", "give 1 to 200"});
    if (!within(o.riser_most_m, 0.0, kGreatestRiser_m))
        out.push_back({"riser_most_m", "the greatest riser is out of range", "give 0 to 1.5 m"});
    if (!within(o.slope_most_rad, 0.0, base::radians(60.0)))
        out.push_back({"slope_most_rad", "the greatest slope is out of range", "give 0 to 60°"});
    if (!within(o.headroom_m, 0.0, 50.0))
        out.push_back({"headroom_m", "the headroom is out of range", "give 0 to 50 m"});
    if (!within(o.beam_headroom_m, 0.0, 50.0)) {
        out.push_back(
            {"beam_headroom_m", "the headroom under the beam is out of range", "give 0 to 50 m"});
    }
    return out;
}

const char* restriction_name(Restriction restriction) {
    switch (restriction) {
        case Restriction::exact:
            return "exact";
        case Restriction::step:
            return "rounded";
        case Restriction::flights:
            return "flights";
        case Restriction::riser:
            return "riser";
        case Restriction::slope:
            return "slope";
        case Restriction::ceiling:
            return "ceiling";
        case Restriction::beam:
            break;
    }
    return "beam";
}

}  // namespace rakeline::sight
