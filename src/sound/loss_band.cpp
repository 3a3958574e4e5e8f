// SPDX-License-Identifier: MIT
#include "sound/loss_band.hpp"

#include "base/assert.hpp"

namespace rakeline::sound {
namespace {

Sheet of_form(const Sheet& sheet, const SheetForm& form) {
    return {.perforation = sheet.perforation,
            .thickness_m = sheet.thickness_m,
            .mass_kg_m2 = sheet.mass_kg_m2,
            .loss_table = {},
            .form = form};
}

/// Both forms of the tube once, for all ends that are added to them.
class Losses {
public:
    Losses(const Sheet& sheet, double frequency_hz, const Air& air)
        : sheet_(of_form(sheet, {})), frequency_hz_(frequency_hz), air_(air) {
        exact_ = tube(TubeForm::exact);
        maa_ = tube(TubeForm::maa);
    }

    double by(const SheetForm& form) {
        sheet_.form = form;
        const auto holes = hole_impedance(sheet_, form.tube == TubeForm::exact ? exact_ : maa_,
                                          frequency_hz_, air_);
        const auto sheet = beside_limp_mass(sheet_, holes, frequency_hz_);
        return transmission_loss_db(sheet / (2.0 * air_.impedance_pa_s_m()), 1.0);
    }

private:
    std::complex<double> tube(TubeForm form) {
        sheet_.form.tube = form;
        return tube_impedance(sheet_, frequency_hz_, air_);
    }

    Sheet sheet_;
    double frequency_hz_;
    const Air& air_;
    std::complex<double> exact_, maa_;
};

}  // namespace

LossBand loss_band(const Sheet& sheet, double frequency_hz, const Air& air) {
    RL_ASSERT(!sheet.measured());
    Losses losses(sheet, frequency_hz, air);
    const SheetForm used = published_forms().front();
    const double by_used = losses.by(used);
    LossBand band{by_used, by_used, used, used};
    for (const SheetForm& form : published_forms()) {
        const double loss = losses.by(form);
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
    return screen_loss_db(of_form(sheet, form), frequency_hz, 0.0, air);
}

}  // namespace rakeline::sound
