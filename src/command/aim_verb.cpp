// SPDX-License-Identifier: MIT
#include "command/verbs.hpp"
#include "study/aim_advice.hpp"

#include <memory>

namespace rakeline::command {
namespace {

struct AimWords {
    std::string file, loudspeaker, output;
    bool height = false;
    bool force = false;
    bool imperial = false;
};

constexpr const char* kScope =
    "Mean over 2, 4 and 8 kHz of the loudest seat less the quietest, direct sound alone. A choice "
    "to look at, no order: images should still come from where the picture is.\n"
    "Caution: turning or raising a cabinet changes what its fixings carry; a structural engineer "
    "and a licensed rigger settle that under local codes.\n";

int aim(const AimWords& words) {
    if (!words.output.empty() && !words.force && same_file(words.file, words.output))
        return refuse("-o names the layout that is read",
                      "name a new file, or add --force to write over it");
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    const auto chosen = choose_loudspeaker(study->layout(), words.loudspeaker);
    if (!chosen) return refuse(chosen.problems());
    std::string text = study->layout().name + ": aim of the screen loudspeakers\n\n";
    room::Layout aimed = study->layout();
    int count = 0;
    for (int l = 0; l < static_cast<int>(aimed.loudspeakers.size()); ++l) {
        if (chosen->value_or(l) != l) continue;
        const auto proposal = study::aim_advice(*study, l, words.height);
        if (!proposal) continue;
        ++count;
        text += study::aim_words(study->layout(), l, *proposal, unit_system(words.imperial)) + "\n";
        aimed = study::with_aim(aimed, l, proposal->after);
    }
    if (count == 0)
        return refuse("there is no loudspeaker to aim",
                      "name one of the left, centre or right channel, in a room with seats");
    if (!words.output.empty()) {
        const int put = put_layout(std::move(aimed), words.file, words.output);
        if (put != kDone) return put;
    }
    return put_output("-", text + "\n" + kScope);
}

}  // namespace

void add_aim_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand(
        "aim", "Find where screen loudspeakers should point for the seats to differ least");
    auto words = std::make_shared<AimWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--loudspeaker", words->loudspeaker,
                     "Loudspeaker by name; else all of the left, centre and right channels");
    verb->add_flag("--height", words->height,
                   "Let the height change too, within the picture's height");
    verb->add_flag("--imperial", words->imperial, "Feet");
    verb->add_option("-o", words->output, "Layout to write, with the loudspeakers aimed so");
    verb->add_flag("--force", words->force, "Write over the layout that is read");
    verb->callback([&choice, words] { choice.action = [words] { return aim(*words); }; });
}

}  // namespace rakeline::command
