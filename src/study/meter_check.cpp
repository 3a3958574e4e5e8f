// SPDX-License-Identifier: MIT
#include "study/meter_check.hpp"

#include "base/number_text.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::study {
namespace {

/// Places nearer than this are one place, m.
constexpr double kSamePlace_m = 0.001;

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

/// Why a projector gives no picture in a format, or that it does not make it.
base::Problem no_picture(const Study& study, const MeterSubject& subject) {
    const room::Layout& layout = study.layout();
    const std::string pair = "'" + layout.projectors.at(index(subject.projector)).name + "' in '" +
                             layout.formats.at(index(subject.format)).name + "'";
    for (const picture::NoPicture& none : study.picture.none) {
        if (none.projector == subject.projector && none.format == subject.format)
            return {{}, 0, {}, pair + " gives no picture: " + none.why, none.mend};
    }
    return {{}, 0, {}, pair + " has no use in the layout", "choose a format that it shows"};
}

const light::PictureLight& light_of(const Study& study, const picture::ProjectedPicture& picture) {
    return study.light.lights.at(
        static_cast<std::size_t>(&picture - study.picture.pictures.data()));
}

std::string side_text(double over_m, const char* side) {
    return base::fixed_text(over_m, 3) + " m beyond the picture's " + side + " edge";
}

/// Which edge of the opening a place lies beyond; empty inside.
std::string beyond(const geometry::Rectangle& opening, glm::dvec2 uv) {
    if (uv.x < opening.left) return side_text(opening.left - uv.x, "left");
    if (uv.x > opening.right) return side_text(uv.x - opening.right, "right");
    if (uv.y < opening.bottom) return side_text(opening.bottom - uv.y, "lower");
    if (uv.y > opening.top) return side_text(uv.y - opening.top, "upper");
    return {};
}

/// Finds rows their places and seats, and keeps what is wrong with them.
class Placer {
public:
    Placer(const Study& study, const MeterSubject& subject, const light::MeterScene& scene)
        : study_(study), subject_(subject), scene_(scene) {}

    void add(const MeterRow& row) {
        MeterPlace place{row, uv_of(row), {}};
        if (row.unit == base::Unit::cd_per_m2) place.seat = seat_of(row);
        const std::string off = beyond(scene_.opening, place.uv);
        const char* column = row.point ? "point" : "across_m, up_m";
        if (!off.empty())
            fault(row, column, "the place lies " + off, "measure from the opening's centre");
        else if (reading_of(place) && light::meter_sample(scene_, *reading_of(place)).nodes.empty())
            fault(row, column, "the picture leaves this place dark",
                  "read where the picture's light falls");
        check_repeat(place);
        places.push_back(std::move(place));
    }

    /// Nothing where a luminance reading has no seat.
    std::optional<light::MeterReading> reading_of(const MeterPlace& place) const {
        const bool incident = place.row.unit == base::Unit::lux;
        if (!incident && !place.seat) return std::nullopt;
        const double usual = incident ? light::kMeterAccuracy_lx : light::kMeterAccuracy_cdm2;
        light::MeterReading out;
        out.uv = place.uv;
        out.incident = incident;
        out.value = place.row.value;
        out.error = light::standard_error(place.row.accuracy.value_or(usual));
        out.spot_rad = place.row.spot_rad;
        if (place.seat) out.eye = study_.seats.seats.at(index(*place.seat)).eye;
        return out;
    }

    std::vector<MeterPlace> places;
    base::Problems problems;

private:
    void fault(const MeterRow& row,
               const std::string& where,
               const std::string& what,
               const std::string& mend) {
        problems.push_back({row.file, row.line, where, what, mend});
    }

    glm::dvec2 uv_of(const MeterRow& row) const {
        const geometry::Rectangle& o = scene_.opening;
        if (!row.point) return o.centre() + row.place_m;
        return o.centre() +
               0.5 * glm::dvec2(o.width(), o.height()) * light::point_place(*row.point);
    }

    std::optional<int> seat_of(const MeterRow& row) {
        if (row.seat.empty()) {
            const auto seat = subject_.seat ? subject_.seat : study_.reference_seat;
            if (!seat)
                fault(row, "seat", "the room has no seat to read luminance from",
                      "put seats into the layout, or read the light on the sheet");
            return seat;
        }
        const auto seat = room::find_seat(study_.seats, row.seat);
        if (!seat)
            fault(row, "seat", "there is no seat '" + row.seat + "'",
                  "name a seat of the layout, such as " + (study_.seats.seats.empty()
                                                               ? std::string("none")
                                                               : study_.seats.seats.front().name));
        return seat;
    }

    void check_repeat(const MeterPlace& place) {
        for (const MeterPlace& other : places) {
            if (other.row.unit != place.row.unit || other.seat != place.seat ||
                glm::length(other.uv - place.uv) > kSamePlace_m)
                continue;
            fault(place.row, place.row.point ? "point" : "across_m, up_m",
                  "the place was read before" + (other.row.line
                                                     ? ", in line " + std::to_string(other.row.line)
                                                     : std::string()),
                  "give one reading a place and seat: the mean of several");
            return;
        }
    }

    const Study& study_;
    const MeterSubject& subject_;
    const light::MeterScene& scene_;
};

base::Problem no_light(const std::vector<MeterRow>& rows) {
    return {rows.empty() ? std::string() : rows.front().file, 0, "value",
            rows.empty() ? "there are no readings" : "no reading is over 0",
            "read with the lamp lit and a white picture on the screen"};
}

}  // namespace

base::Result<int> metered_format(const Study& study, int projector) {
    for (const picture::ProjectedPicture& picture : study.picture.pictures)
        if (picture.projector == projector) return picture.format;
    for (const picture::NoPicture& none : study.picture.none)
        if (none.projector == projector)
            return no_picture(study, {projector, none.format, std::nullopt});
    return base::Problem{
        {}, 0, {}, "the projector shows no format", "give it a use for one in the layout"};
}

base::Result<MeterCheck> check_meter(const Study& study,
                                     const MeterSubject& subject,
                                     const std::vector<MeterRow>& rows) {
    const auto* picture = picture::find_picture(study.picture, subject.projector, subject.format);
    if (!picture) return no_picture(study, subject);
    MeterCheck out;
    out.subject = subject;
    if (!out.subject.seat) out.subject.seat = study.reference_seat;
    out.scene = light::meter_scene(
        study.layout().screen, study.layout().projectors.at(index(subject.projector)), *picture,
        study.picture.openings.at(index(subject.format)), light_of(study, *picture));
    Placer placer(study, out.subject, out.scene);
    for (const MeterRow& row : rows)
        placer.add(row);
    if (!placer.problems.empty()) return placer.problems;
    const auto lit = [](const MeterRow& row) { return row.value > 0.0; };
    if (std::none_of(rows.begin(), rows.end(), lit)) return no_light(rows);
    std::vector<light::MeterReading> readings;
    for (const MeterPlace& place : placer.places)
        readings.push_back(*placer.reading_of(place));
    out.places = std::move(placer.places);
    out.fit = light::fit_meter(out.scene, readings);
    out.signs = light::meter_signs(out.fit);
    return out;
}

base::Result<room::Layout> metered_layout(const room::Layout& layout, const MeterCheck& check) {
    room::Layout out = layout;
    room::FluxChain& flux = out.projectors.at(index(check.subject.projector)).flux;
    flux.entry = room::FluxEntry::measured;
    flux.measured_flux_lm = check.fit.part(light::kPeak).value;
    flux.corner_fraction = check.fit.part(light::kCorner).value;
    flux.hot_spot_across = check.fit.part(light::kAcross).value;
    flux.hot_spot_up = check.fit.part(light::kUp).value;
    // The document's own reader knows its ranges.
    const auto read = room::read_layout(room::write_layout(out), "the layout with the fit");
    if (!read) return read.problems();
    return out;
}

}  // namespace rakeline::study
