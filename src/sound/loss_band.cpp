// SPDX-License-Identifier: MIT
#include "sound/loss_band.hpp"

#include "base/assert.hpp"

namespace rakeline::sound {
namespace {

double loss_with(const Sheet& sheet, const SheetForm& form, double frequency_hz, const Air& air) {
    const Sheet by_form{.perforation = sheet.perforation,
                        .thickness_m = sheet.thickness_m,
                        .mass_kg_m2 = sheet.mass_kg_m2,
                        .loss_table = {},
                        .form = form};
    return screen_loss_db(by_form, frequency_hz, 0.0, air);
}

}  // namespace

LossBand loss_band(const Sheet& sheet, double frequency_hz, const Air& air) {
    RL_ASSERT(!sheet.measured());
    const SheetForm used = published_forms().front();
    const double by_used = loss_with(sheet, used, frequency_hz, air);
    LossBand band{by_used, by_used, used, used};
    for (const SheetForm& form : published_forms()) {
        const double loss = loss_with(sheet, form, frequency_hz, air);
        if (loss < band.least_db) {
            band.least_db = loss;
            band.least_form = form;
        }
        if (loss > band.most_db) {
            band.most_db = loss;
            band.most_form = form;
        }
    }
    return band;
}

double loss_apart_db(const Sheet& sheet, double frequency_hz, const Air& air) {
    SheetForm form;
    form.interaction = HoleInteraction::none;
    return loss_with(sheet, form, frequency_hz, air);
}

}  // namespace rakeline::sound
