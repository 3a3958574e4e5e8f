// SPDX-License-Identifier: MIT
//
// The grand house worked by hand: seat U9 on the balcony, 2.20, 70 mm film, a screen that leans
// back by 3 degrees. Lengths in m, angles in degrees, unless a unit is given. Each line was worked
// with plain arithmetic from the numbers of layouts/grand-620.json; results are rounded to the
// digits shown, nothing before them.
#include "study/hand_worked.hpp"

#include <cmath>

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

namespace {

const tests::HandWorked& grand() {
    static const tests::HandWorked worked(
        {.room = "grand-620", .projector = "Film 70 mm", .format = "2.20", .seat = "U9"});
    return worked;
}

}  // namespace

TEST_SUITE("study/hand_worked grand") {
    TEST_CASE("the room file has the numbers that the working starts from") {
        const room::Screen& s = grand().layout().screen;
        CHECK(s.width_m == 15.7);
        CHECK(s.height_m == 7.3);
        CHECK(s.sill_m == 1.2);
        CHECK(s.setback_m == 1.6);
        CHECK(s.surface.matte_gain == 0.75);
        const room::SeatBlock& balcony = grand().layout().seating.at(1);
        CHECK(balcony.first_row_back_m == 21.7);
        CHECK(balcony.first_row_up_m == 5.5);
        CHECK(balcony.riser_m == 0.38);
        const room::Projector& p = grand().projector();
        CHECK(p.up_m == 10.85);
        CHECK(p.back_m == 30.1);
        CHECK(p.flux.lamp_voltage_v == 38.0);
    }

    TEST_CASE("eye of seat U9 and the opening of 2.20") {
        // 28 seats at 0.55 and two aisles of 1.2 make 17.8; seat 9 stands -8.9 + 8.5 x 0.55 + 1.2 =
        // -3.025 along an arc of radius 40 + 3 = 43 about back 21.7 - 40 = -18.3: -4.030691 deg.
        // Row U is the fourth: floor 5.5 + 3 x 0.38 = 6.64, eye 1.18 above it.
        check_close(grand().seat().eye.x, -3.022506, printed_digits(6));
        check_close(grand().seat().eye.y, 7.82, printed_digits(6));
        check_close(grand().seat().eye.z, 24.593641, printed_digits(6));
        // Four-way masking at 15.3 wide: 15.3/2.2 = 6.954545 high, area 106.40455.
        check_close(grand().figure("picture.width"), 15.3, printed_digits(6));
        check_close(grand().figure("picture.height"), 6.954545, printed_digits(6));
        check_close(grand().figure("picture.area"), 106.40455, printed_digits(5));
        // Centre (0, 4.85, 1.6); up the sheet (0, 0.998630, -0.0523360), normal (0, 0.0523360,
        // 0.998630). Top (0, 8.322507, 1.418014), bottom (0, 1.377493, 1.781986).
    }

    TEST_CASE("throw, focal length and angles of the 70 mm machine") {
        // Lens (0, 10.85, 30.1) to the centre: (0, -6, -28.5), D = sqrt(36 + 812.25) = 29.124732.
        check_close(grand().figure("picture.throw"), 29.12473, printed_digits(5));
        check_close(grand().figure("picture.throw_ratio"), 1.903577, printed_digits(6));
        // 48.565 x 29.124732/(15.3 + 0.048565) = 92.15471 mm; field 48.565 x 29.124732/15.3.
        check_close(1e3 * grand().figure("picture.focal_length"), 92.15471, printed_digits(5));
        check_close(1e3 * grand().figure("picture.focal_length_field"), 92.44723,
                    printed_digits(5));
        // The axis falls by atan(6/28.5) = 11.888658; the sheet's normal rises toward it by 3.
        check_close(grand().degrees("picture.angle_down"), 8.888658, printed_digits(6));
        check_close(grand().degrees("picture.angle_across"), 0.0, printed_digits(6));
    }

    TEST_CASE("keystone from the four gate corners and by the closed form") {
        // 90 mm prime: b = 0.09 x 29.124732/29.034732 = 90.278976 mm. Axis (0, -0.206010,
        // -0.978550), up (0, 0.978550, -0.206010). Corner directions in mm, t to the sheet:
        //   top    (+-24.2825,  -7.786419, -90.618683)  t 316.5492 (+-7.686606, 8.385215, 1.414727)
        //   bottom (+-24.2825, -29.410412, -86.066263)  t 328.9035 (+-7.986600, 1.176812, 1.792504)
        // Widths 15.373213 and 15.973199: 2 x 0.599987/31.346412 = 0.0382810.
        // Closed form: half field atan(11.049/90.278976) = 6.977576 at 8.888658 to the normal:
        // w_bottom/w_top = cos 1.911082/cos 15.866234 = 1.039028, 2 x 0.039028/2.039028.
        check_close(grand().figure("picture.keystone_vertical"), 0.0382810, printed_digits(7));
        check_close(grand().figure("picture.keystone_horizontal"), 0.0, printed_digits(7));
    }

    TEST_CASE("the 70 mm machine's light in the booth wall") {
        // The wall stands at 29.5, the lens 0.6 behind it. Pupil 90/2.2/2 = 20.454545 in radius.
        // Widest: bottom right corner, (7.986600, 1.176812, 1.792504) from the lens: 0.6/28.307496
        // = 0.0211958 of the way, middle ray at 0.169282 across. The pupil's rim at 0.020455 (c,
        // 0.978550 s, -0.206010 s) was tried in 200000 steps of its turn, each ray drawn to all
        // four corners: across +-0.18933697, up 10.62397121 to 10.81839951.
        check_close(grand().figure("picture.port_width_needed"), 0.37867394, printed_digits(7));
        check_close(grand().figure("picture.port_height_needed"), 0.19442829, printed_digits(7));
        check_close(grand().figure("picture.port_centre_up"), 10.72118536, printed_digits(7));
        check_close(grand().figure("picture.port_centre_across"), 0.0, printed_digits(9));
        // Port 0.45 by 0.4 at 10.724: 0.225 - 0.189337 is less than 10.924 - 10.818400 and
        // 10.623971 - 10.524.
        check_close(1e3 * grand().figure("picture.port_margin"), 35.66303, printed_digits(4));
    }

    TEST_CASE("what the 70 mm beam comes near") {
        // Ceiling: the top rays fall 7.786419 in 90.618683, so the beam is highest at the wall:
        // 10.85 - 0.6 x 0.0859251 = 10.798445 under 12.4.
        check_close(grand().figure("picture.ceiling_clearance"), 1.601555, printed_digits(6));
        // Side wall: half 8.6 + 1.792504 tan 5 = 8.756824 beside the bottom corner at 7.986600:
        // 0.770224 cos 5.
        check_close(grand().figure("picture.wall_clearance"), 0.767293, printed_digits(6));
        // Balcony: front 5.5 + 0.8 high, its outer edge 0.7 + 0.15 before the first row on the arc
        // of 40 - 0.85 = 39.15 about back -18.3. The beam's lower side falls 29.410412 in 86.066263
        // = 0.341718, its sides run 24.2825 in 86.066263 = 0.282137. Where they pass the arc: 2.634
        // across, 20.7613 back, up 10.85 - 0.341718 x 9.3387 = 7.6588.
        check_close(
            grand().figure("picture.balcony_clearance"), 1.3588,
            tests::absolute(0.007, "the arc is cut into chords that stand off it by 20 mm"));
    }

    TEST_CASE("light from the lamp to seat U9") {
        // The glass is upright: 11.888658 to its normal, inside asin(sin/1.52) = 7.789454,
        // t = exp(-0.012/cos) = 0.987961, R = 0.005: T = 0.995^2 t/(1 - R^2 t^2) = 0.978130.
        check_close(grand().figure("light.port_transmittance"), 0.978130, printed_digits(6));
        // Lamp 160 x 38 x 44 x 0.85 = 227392 lm; x 0.19 x 0.5 x 0.88 x 0.88 = 16728.77 lm.
        check_close(grand().figure("light.flux_lens"), 16728.77, printed_digits(2));
        // Lit 49.2 x 22.6 mm: r_corner^2 = 732.85 mm2, k = 0.18/732.85 = 2.456164e-4 per mm2.
        // w h [1 - k (w^2 + h^2)/12]: lit 1045.2048, aperture 1010.6546 mm2; ratio 0.966944.
        // Flux 16728.77 x 0.966944 x 0.978130 = 15822.03 lm.
        check_close(grand().figure("light.flux"), 15822.03, printed_digits(2));
        // cos i = cos 8.888658 = 0.987990; J = D^2/(b^2 cos i) = 848.25/(0.008150294 x 0.987990)
        // = 105341.1. E = 16728.77 x 0.978130/1045.2048e-6/J = 1.565523e7/105341.1 = 148.6146 lx.
        check_close(grand().figure("light.illuminance"), 148.6146, printed_digits(4));
        // Mirror direction: falls by 11.888658 - 6 = 5.888658: (0, -0.102596, 0.994723). To the eye
        // (-3.022506, 2.97, 22.993641)/23.380846 = (-0.129273, 0.127027, 0.983439): cos 0.965217,
        // 15.156049 off the lobe. The matte 0.75 alone is over half the peak: the lobe of 0.45 is
        // half at 38: 0.75 + 0.45 x 2^-(15.156049/38)^2 = 1.153019. Holes pi 0.8^2/(2 sqrt 3 x
        // 3.5^2) = 0.0473809 were not in the gain: G = 1.098388. L = E G/pi = 51.9598.
        check_close(grand().figure("light.luminance"), 51.9598, printed_digits(4));
    }

    TEST_CASE("what seat U9 has of the picture") {
        // Eye to left (-4.627494, -2.97, -22.993641), right (10.672506, -2.97, -22.993641):
        // cos = 488.141469/(23.641957 x 25.523143) = 0.808962.
        check_close(grand().degrees("sight.subtended_width"), 36.00536, printed_digits(5));
        // Top (3.022506, 0.502507, -23.175628), bottom (3.022506, -6.442507, -22.811655):
        // cos = 534.572568/(23.377292 x 23.895879) = 0.956950.
        check_close(grand().degrees("sight.subtended_height"), 16.87301, printed_digits(5));
        // atan(0.502507/23.371891); in plan, where the normal runs straight back,
        // atan(3.022506/22.993641); 23.380846/15.3.
        check_close(grand().degrees("sight.elevation_top"), 1.231698, printed_digits(6));
        check_close(grand().degrees("sight.off_axis"), 7.48857, printed_digits(5));
        check_close(grand().figure("sight.distance_widths"), 1.528160, printed_digits(6));
        // Row U over T: front eye (7.44, 23.7). D = 23.7 - 1.781986 = 21.918014, R = 7.44 -
        // 1.377493 = 6.062507, N = 0.38, T = 1: 21.918014 x 6.442507/22.918014 - 6.062507.
        check_close(grand().figure("sight.c_value"), 0.098889, printed_digits(6));
    }

    TEST_CASE("sound at seat U9") {
        // 20 degC: c = 343.2, rho = 1.204118, eta = 1.813406e-5, 2 rho c = 826.5068.
        // Holes: open area 0.0473809, d/b = 0.228571, Fok 0.681976.
        // 10 kHz: |s| = 25.8367, 2 J1/(s J0) = 0.0547475 - 0.0532284j, tube 1.347853 + 23.935774j,
        //   ends 35.085426j, surface 0.828242; over the open area 45.9277 + 1245.6754j, beside the
        //   limp sheet 22619.467j: 41.2582 + 1180.7350j; over 2 rho c 0.0499187 + 1.428585j.
        // 20 lg |1.0499187 + 1.428585j| = 4.97370 dB.
        check_close(grand().loss_db(10000), 4.97370, printed_digits(5));
        // C (0, 5.73, 0.6) to U9: (-3.022506, 2.09, 23.993641), r = 24.273411, -27.702616 dB.
        // Axis 9.8 down: across -3.022506, up 6.143448, forward 23.287786; 16.383574 off, cos^2 of
        // the roll 0.194881. Held from 1069.438 and 1789.338 Hz: half angles 48.12473 and 44.73346;
        // -6.0206 x 16.383574^2 (0.194881/48.12473^2 + 0.805119/44.73346^2) = -0.786192 dB.
        // Sheet at cos (0.052336 x 2.09 + 0.998630 x 23.993641)/r = 0.991626, z/(2 rho c) at 1 kHz
        // 0.0175322 + 0.148826j: 0.240144 dB. Air 4.653667e-3 x r = 0.112960 dB.
        // 109 + 30.791812 - 27.702616 - 0.786192 - 0.240144 - 0.112960 = 110.9499 dB.
        check_close(grand().level_db(1000), 110.9499, printed_digits(4));
        // Left has two: 24.293196 and 24.084620, the nearer counts; C 24.273411; right 24.850513
        // and 25.789873. (24.850513 - 24.084620)/343.2 = 2.23162 ms.
        check_close(1e3 * grand().figure("sound.arrival_spread"), 2.23162, printed_digits(5));
        // Rows reach from 11.4 to row P at 11.4 + 15 + 1.4 (cross aisle) = 27.8, middle 19.6: H
        // (18.4) and I (20.8) equally near, the first counts. Floor of H by equal clearance of 0.08
        // over the frame's lower edge (up 4.85 - 3.65 cos 3 = 1.205002, back 1.6 + 3.65 sin 3 =
        // 1.791026): from R = -0.025002 at D = 9.608974, seven times R' = (R + 0.08)(D + 1)/D:
        // 0.713856 at 16.608974, eye 1.918858. H has 26 seats; 13 and 14 stand 0.275 off the middle
        // on the arc of 37, alike for C: eye (-+0.274997, 1.918858, 18.398978), r = 18.204506,
        //   139.791812 - 25.203578 - 0.017666 - 0.231630 - 0.084718 = 114.2542 dB
        //   1200 x 10^((108 - 114.2542)/10) = 284.288 W
        const std::string reference = grand().reference_seat();
        INFO(reference);
        CHECK((reference == "H13" || reference == "H14"));
        // What equalising the sheet adds goes on top.
        const double boost = std::pow(10.0, 0.1 * grand().figure("sound.equalisation_headroom"));
        check_close(grand().figure("sound.amplifier_power") / boost, 284.288, printed_digits(3));
        // 0.8 mm x 3437.747 = 2.75020.
        check_close(grand().figure("sound.hole_visible_from"), 2.75020, printed_digits(5));
    }
}
