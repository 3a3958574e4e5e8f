// SPDX-License-Identifier: MIT
#pragma once

#include "light/light_study.hpp"
#include "picture/picture_study.hpp"
#include "room/layout_file.hpp"
#include "room/seat_plan.hpp"
#include "sight/crowd.hpp"
#include "sight/sight_study.hpp"
#include "sound/hole_study.hpp"
#include "sound/sound_study.hpp"
#include "study/figure.hpp"
#include "study/register.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// All subjects run over one brief.
namespace rakeline::study {

/// Where a finding or figure points in the room, so that the window can go there.
struct Place {
    std::optional<int> projector, format, loudspeaker, seat, row, band;
    bool operator==(const Place&) const = default;
};

/// A figure that misses its limit (or comes near it), in a sentence.
struct Finding {
    Verdict verdict = Verdict::missed;
    Subject subject = Subject::room;
    std::string
        figure;  ///< id; empty for a finding that is no figure (a projector that sees no screen)
    std::string what;           ///< "Row F sees 64 mm over row E in 2.39"
    std::string against;        ///< "wanted at least 120 mm · common practice, no source"
    std::string what_imperial;  ///< the same two sentences in feet and foot-lamberts
    std::string against_imperial;
    std::string mend;  ///< "raise row F and those behind it, ..."
    Place place;

    const std::string& what_in(base::UnitSystem system) const {
        return system == base::UnitSystem::metric ? what : what_imperial;
    }
    const std::string& against_in(base::UnitSystem system) const {
        return system == base::UnitSystem::metric ? against : against_imperial;
    }
    bool operator==(const Finding&) const = default;
};

struct Study {
    std::shared_ptr<const room::Brief> brief;
    room::SeatPlan seats;
    std::optional<int> reference_seat;
    picture::PictureStudy picture;
    light::LightStudy light;
    sight::SightStudy sight;
    sound::SoundStudy sound;
    sound::HoleStudy holes;
    /// Random audiences; null where none were drawn. Then the figures of the crowd are not there.
    std::shared_ptr<const sight::CrowdStudy> crowd;
    std::vector<Figure> figures;  ///< in register order, then projector, format, loudspeaker, band
    std::vector<Finding> findings;  ///< missed first, by subject

    const room::Layout& layout() const { return brief->layout; }
};

/// The definition of a study: pure, same brief in, same study out, bit for bit. Draws no crowd.
Study compute_study(std::shared_ptr<const room::Brief> brief);

/// Random audiences for the study's room, which take seconds where a study takes milliseconds. The
/// same study gives the same crowds, bit for bit. Null where `run.stop` came first.
std::shared_ptr<const sight::CrowdStudy> sample_crowd(const Study& study,
                                                      const sight::CrowdRun& run = {});

/// The study with what its crowds answered: figures and findings follow anew, nothing else does.
Study with_crowd(Study study, std::shared_ptr<const sight::CrowdStudy> crowd);

/// Remembers each subject's last inputs and result, so that an edit recomputes what it touches.
/// update() gives exactly what compute_study would.
class StudyCache {
public:
    StudyCache();
    ~StudyCache();
    StudyCache(StudyCache&&) noexcept;
    StudyCache& operator=(StudyCache&&) noexcept;
    Study update(std::shared_ptr<const room::Brief> brief);

    /// sample_crowd's last result if this study would give it again, else null.
    std::shared_ptr<const sight::CrowdStudy> known_crowd(const Study& study) const;
    void remember_crowd(const Study& study, std::shared_ptr<const sight::CrowdStudy> crowd);

private:
    struct Memory;
    std::unique_ptr<Memory> memory_;
};

/// The figure with this id for a place; fields of `place` that the figure is not per are ignored,
/// unset ones it is per match the first. Null if there is none.
const Figure* find_figure(const Study& study, std::string_view id, const Place& place = {});

/// The one value of a figure (axis none), or that at `index`; nothing where undefined.
std::optional<double> value_at(const Figure& figure, int index = 0);

/// Name of what `index` runs over: "C14", "C", "1000".
std::string index_name(const Study& study, const FigureDefinition& definition, int index);

/// Worst verdict of a subject over the figures for this projector and format (unset: all).
Verdict subject_verdict(const Study& study, Subject subject, const Place& place = {});

/// The hall's air.
sound::Air air_of(const Study& study);

/// The cross aisles of the layout, with people who stand in them shoulder to shoulder.
std::vector<room::CrossAisleLine> cross_aisles(const Study& study);

/// Formula, values put in, result, limit and source of one value, by the function that computed it.
struct Derivation {
    const FigureDefinition* definition = nullptr;
    std::string what;  ///< "Luminance, projector Film, format 2.39, seat F11"
    std::vector<WorkingStep> inputs;
    std::vector<std::string> notes;
    std::optional<double> result;
    std::vector<const room::Limit*> limits;  ///< that apply to it
};
Derivation derive(const Study& study, const Figure& figure, int index = 0);

/// Reads a layout and its limits, and refuses limits on figures that the register does not have.
base::Result<room::Brief> open_room(const std::string& path, const base::ReadText& read);

/// The derivation as lines of text, in a unit system.
std::vector<std::string> derivation_text(const Derivation& derivation, base::UnitSystem system);

}  // namespace rakeline::study
