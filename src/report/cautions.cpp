// SPDX-License-Identifier: MIT
#include "report/report.hpp"

namespace rakeline::report {

const std::vector<Caution>& cautions() {
    static const std::vector<Caution> list = {
        {"Xenon lamps",
         "A xenon lamp is under pressure even when cold, and under much more when hot: it can "
         "burst. "
         "Only people trained for it open a lamphouse, with face, neck and hand protection on, "
         "after "
         "the lamp has cooled, and following the lamp maker's and the local safety rules."},
        {"Electrical supply",
         "Lamp supplies carry currents and ignition voltages that kill. The currents named here "
         "are "
         "an aid to planning; circuits, protection, earthing and isolation are for a licensed "
         "electrician to design and test under the local wiring code."},
        {"Heat, exhaust and ozone",
         "Lamps and supplies heat the booth, and some lamps make ozone. Exhaust, make-up air, fire "
         "separation of the booth and its ports are for a licensed ventilation engineer and the "
         "local fire authority to settle."},
        {"Bright beams and ultraviolet light",
         "Never look into a lens, a port or an open lamphouse while a lamp is lit. Keep people's "
         "eyes out of the beam near the port; hazard distances for lamp and laser light follow the "
         "projector maker's data and the local rules on optical radiation."},
        {"Filing a gate plate",
         "File a plate out of the machine only, with the lamp off and cold. A wrong or burred "
         "plate "
         "can scratch film: deburr it and try it on film of no value first. The projector maker's "
         "and the local safety rules go before this drawing (common practice, no source)."},
        {"Rigging",
         "Screens, frames, masking and loudspeakers hang over people, and heavy cabinets stand "
         "high "
         "behind screens. Loads, platforms, fixings and second suspensions are for a structural "
         "engineer to work out and for a competent rigger to "
         "install and inspect under local codes."},
        {"Loud sound",
         "Peaks as high as those planned here harm hearing where they last or come often, and a "
         "loudspeaker under test can be louder still close by. Levels for audience and staff are "
         "for a competent person to measure and for the local rules on sound exposure to bound; "
         "protect the ears of whoever works near a loudspeaker that plays."},
        {"Steps, aisles and exits",
         "Risers, treads, aisle widths, rails, row lengths, travel distances and exits are set by "
         "the local building and fire codes. A floor that suits the eyes here is not for that "
         "reason "
         "allowed: a licensed architect checks it."},
        {"Access",
         "Wheelchair and companion places, their number, sight over standing people and the way to "
         "them follow the local access law, which goes before anything in this report; the table "
         "and the eye heights here are one country's, as an example. That the places are spread "
         "over the room, not all in one row or at the front, is not checked here."},
        {"This study",
         "The figures follow from the layout as given and from published formulas; they stand in "
         "for "
         "no measurement on site. The consultant who signs answers for their use, and the licensed "
         "professions answer for what is built."},
    };
    return list;
}

}  // namespace rakeline::report
