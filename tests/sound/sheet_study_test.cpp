// SPDX-License-Identifier: MIT
#include "sound/sheet_study.hpp"

#include "base/units.hpp"
#include "sound/sound_study.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using room::Channel;
using sound::kThirds;
using sound::SheetStudy;
using sound::SoundInput;
using sound::third_at;

namespace {

room::Loudspeaker behind(Channel channel, double across_m, double back_m) {
    room::Loudspeaker l;
    l.channel = channel;
    l.across_m = across_m;
    l.up_m = 3.0;
    l.back_m = back_m;
    return l;
}

SoundInput screen_wall() {
    SoundInput in;
    in.surface = geometry::standing_patch({0, 3.0, 1.2}, 0.0, 0.0);
    in.sheet.perforation.pattern = room::PerforationPattern::square;
    in.loudspeakers = {behind(Channel::left, -4.0, 0.5), behind(Channel::centre, 0.0, 0.5),
                       behind(Channel::sub_bass, 1.0, 0.5), behind(Channel::surround, 6.0, 9.0)};
    in.loudspeakers[3].behind_screen = false;
    in.ears = {{0.0, 3.0, 10.0}, {4.0, 1.2, 6.0}};
    in.reference_seat = 0;
    return in;
}

}  // namespace

TEST_SUITE("sound/sheet_study") {
    TEST_CASE("screen channels behind the sheet have a gap; sub-bass and surrounds do not") {
        const SheetStudy study = sound::study_sheet(screen_wall());
        REQUIRE(study.channels.size() == 4);
        CHECK(study.channels[0]);
        CHECK(study.channels[1]);
        CHECK_FALSE(study.channels[2]);
        CHECK_FALSE(study.channels[3]);
        check_close(study.channels[0]->gap.along_m, 0.7, absolute(1e-12, "1.2 m less 0.5 m"));
        check_close(study.channels[0]->spacing_hz, 343.2 / 1.4, relative(1e-12, "c/(2 d)"));
    }

    TEST_CASE("the loss to be made good is the one on the way to the reference seat") {
        SoundInput in = screen_wall();
        const double to_seat = std::atan2(4.0, 9.5);
        const SheetStudy study = sound::study_sheet(in);
        check_close(study.channels[0]->incidence_rad, to_seat, absolute(1e-9, "rounding"));
        CHECK(study.channels[0]->loss_db ==
              sound::loss_by_thirds(in.sheet, study.channels[0]->incidence_rad, in.air));
        check_close(study.channels[1]->incidence_rad, 0.0, absolute(1e-7, "an arc cosine near 1"));
        in.reference_seat.reset();
        in.loudspeakers[0].yaw_rad = 0.3;
        check_close(sound::study_sheet(in).channels[0]->incidence_rad, 0.3,
                    absolute(1e-9, "along the axis"));
    }

    TEST_CASE("boost, loss and gap of a channel agree") {
        const SoundInput in = screen_wall();
        const auto study = sound::study_sheet(in);
        const sound::ChannelSheet& channel = *study.channels[0];
        CHECK(channel.equalisation ==
              sound::equalisation(channel.loss_db, channel.gap_level_db, in.playback));
        double greatest = 0.0;
        for (std::size_t i = third_at(200.0); i <= third_at(10000.0); ++i)
            greatest = std::max(greatest, channel.gap_ripple_db[i]);
        CHECK(channel.ripple_db == greatest);
        CHECK(channel.ripple_db > 0.0);
        CHECK(channel.dip_above_m < channel.gap.along_m);
        CHECK(channel.dip_below_m < channel.gap.along_m);
        CHECK(channel.dip_hz < sound::kRippleFrom_hz);
    }

    TEST_CASE("the quoted limits' losses are over that at 500 Hz") {
        const SoundInput in = screen_wall();
        const SheetStudy study = sound::study_sheet(in);
        const auto loss = [&](double hz) {
            return sound::screen_loss_db(in.sheet, hz, 0.0, in.air);
        };
        CHECK(study.treble_6k_db == loss(6000.0) - loss(500.0));
        CHECK(study.treble_8k_db == loss(8000.0) - loss(500.0));
        CHECK(study.loss_10k_db == loss(10000.0));
        CHECK(study.loss_60_db[third_at(10000.0)] ==
              sound::screen_loss_db(in.sheet, 10000.0, base::radians(60.0), in.air));
    }

    TEST_CASE("no band of conventions where the loss is measured or there are no holes") {
        SoundInput in = screen_wall();
        CHECK(sound::study_sheet(in).band);
        in.sheet.loss_table = {{500.0, 0.2}, {10000.0, 4.0}};
        const SheetStudy measured = sound::study_sheet(in);
        CHECK_FALSE(measured.band);
        CHECK_FALSE(measured.apart_db);
        check_close(measured.loss_10k_db, 4.0, absolute(1e-9, "the measured point"));
        in.sheet.loss_table.clear();
        in.sheet.perforation.pattern = room::PerforationPattern::none;
        CHECK_FALSE(sound::study_sheet(in).band);
    }
}
