// SPDX-License-Identifier: MIT
//
// The converted hall worked by hand: seat E4, 2.39 anamorphic, 35 mm film. Lengths in m, angles in
// degrees, unless a unit is given. Each line was worked with plain arithmetic from the numbers of
// layouts/converted-hall-96.json; results are rounded to the digits shown, nothing before them.
#include "study/hand_worked.hpp"

#include <cmath>

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

namespace {

const tests::HandWorked& hall() {
    static const tests::HandWorked worked(
        {.room = "converted-hall-96", .projector = "Film 35 mm", .format = "2.39", .seat = "E4"});
    return worked;
}

}  // namespace

TEST_SUITE("study/hand_worked converted_hall") {
    TEST_CASE("the room file has the numbers that the working starts from") {
        const room::Screen& s = hall().layout().screen;
        CHECK(s.width_m == 8.4);
        CHECK(s.height_m == 3.515);
        CHECK(s.sill_m == 1.35);
        CHECK(s.setback_m == 1.1);
        CHECK(s.perforation.pitch_m == 0.005);
        const room::SeatBlock& b = hall().layout().seating.front();
        CHECK(b.first_row_back_m == 6.2);
        CHECK(b.row_spacing_m == 1.05);
        const room::Projector& p = hall().projector();
        CHECK(p.across_m == -0.7);
        CHECK(p.up_m == 4.6);
        CHECK(p.back_m == 17.0);
        CHECK(p.flux.lamp_current_a == 70.0);
        CHECK(p.flux.hot_spot_up == 0.03);
    }

    TEST_CASE("eye of seat E4 and the opening of 2.39") {
        // 12 seats at 0.55: seat 4 stands (4 - 6.5) 0.55 = -1.375 across. Row E is the fifth:
        // back 6.2 + 4 x 1.05 = 10.4, floor 4.2 tan 5 = 4.2 x 0.0874887 = 0.367452, eye 1.2 above.
        check_close(hall().seat().eye.x, -1.375, printed_digits(6));
        check_close(hall().seat().eye.y, 1.567452, printed_digits(6));
        check_close(hall().seat().eye.z, 10.4, printed_digits(6));
        // Common height: 3.515 x 2.39 = 8.40085 is wider than the frame's 8.4, so the width gives
        // the height: 8.4/2.39 = 3.514644, area 8.4 x 3.514644 = 29.52301.
        check_close(hall().figure("picture.width"), 8.4, printed_digits(6));
        check_close(hall().figure("picture.height"), 3.514644, printed_digits(6));
        check_close(hall().figure("picture.area"), 29.52301, printed_digits(5));
        // Its centre is the frame's: up 1.35 + 3.515/2 = 3.1075, back 1.1.
    }

    TEST_CASE("throw, focal length and angles of the film machine") {
        // Lens (-0.7, 4.6, 17) to the picture's centre: d = (0.7, -1.4925, -15.9),
        // D = sqrt(0.49 + 2.22756 + 252.81) = 15.98523; D/W = 15.98523/8.4 = 1.903003.
        check_close(hall().figure("picture.throw"), 15.98523, printed_digits(5));
        check_close(hall().figure("picture.throw_ratio"), 1.903003, printed_digits(6));
        // A = 2 x 20.955 = 41.91 mm. f = 41.91 x 15.98523/(8.4 + 0.04191) = 79.3589 mm;
        // the field rule 41.91 x 15.98523/8.4 = 79.7549 mm.
        check_close(1e3 * hall().figure("picture.focal_length"), 79.3589, printed_digits(4));
        check_close(1e3 * hall().figure("picture.focal_length_field"), 79.7549, printed_digits(4));
        // atan(1.4925/15.9) = 5.36252 down, atan(0.7/15.9) = 2.52083 toward +x.
        check_close(hall().degrees("picture.angle_down"), 5.36252, printed_digits(5));
        check_close(hall().degrees("picture.angle_across"), 2.52083, printed_digits(5));
    }

    TEST_CASE("keystone from the four gate corners") {
        // Axis a = d/D = (0.0437904, -0.0933674, -0.994668); level right r = (-a_z, 0,
        // a_x)/0.995632 = (0.999032, 0, 0.0439826); up u = r x a = (0.00410654, 0.995632,
        // -0.0932771). The 77.5 mm prime: b = f D/(D - f) = 0.0775 x 15.98523/15.90773 = 0.0778776.
        // Corner directions a b +- r (2 x 20.955/2 mm) +- u (17.526/2 mm), to the plane z = 1.1,
        // that is t = -15.9/direction_z:
        //   top left      (-0.0174884,  0.00145349, -0.0792014)  t 200.754  (-4.210876, 4.891794)
        //   top right     ( 0.0243810,  0.00145349, -0.0773581)  t 205.538  ( 4.311214, 4.898747)
        //   bottom right  ( 0.0243090, -0.0159960,  -0.0757233)  t 209.975  ( 4.404288, 1.241250)
        //   bottom left   (-0.0175604, -0.0159960,  -0.0775666)  t 204.985  (-4.299624, 1.321068)
        // Edges: top 8.522093, bottom 8.704278; left 3.571829, right 3.658681.
        //   2 (8.704278 - 8.522093)/17.226371 = 0.0211518
        //   2 (3.658681 - 3.571829)/7.230509  = 0.0240238
        check_close(hall().figure("picture.keystone_vertical"), 0.0211518, printed_digits(7));
        check_close(hall().figure("picture.keystone_horizontal"), 0.0240238, printed_digits(7));
    }

    TEST_CASE("light from the lamp to seat E4") {
        // Axis to the glass's normal: acos 0.994668 = 5.91924; inside asin(sin i/1.52) = 3.89030;
        // t = exp(-2 x 0.006/cos 3.89030) = 0.988044. R_s = 0.0431823, R_p = 0.0419815;
        // T = (1 - R)^2 t/(1 - R^2 t^2): 0.906204 and 0.908389, mean 0.907297.
        check_close(hall().figure("light.port_transmittance"), 0.907297, printed_digits(6));
        // Lamp 70 x 24 x 37 x 0.85 = 52836 lm; x 0.3 x 0.5 x 0.85 x 0.85 = 5726.10 lm.
        check_close(hall().figure("light.flux_lens"), 5726.10, printed_digits(2));
        // Lit 21.3 x 17.8 mm: r_corner^2 = (21.3^2 + 17.8^2)/4 = 192.6325 mm2;
        // k = (1 - 0.78)/192.6325 = 0.001142071 per mm2; hot spot 0.03 x 17.8 = 0.534 mm up.
        // Integral of 1 - k r^2 over w x h about the centre: w h [1 - k ((w^2 + h^2)/12 + 0.534^2)]
        //   lit area 351.2129 mm2; aperture 20.955 x 17.526: 341.0534 mm2; ratio 0.971073.
        // Flux 5726.10 x 0.971073 x 0.907297 = 5044.99 lm.
        check_close(hall().figure("light.flux"), 5044.99, printed_digits(2));
        // Centre of the gate: rel = 1 - k 0.534^2 = 0.999674;
        // density 5726.10 x 0.907297 x 0.999674/351.2129e-6 = 1.478756e7 lm/m2.
        // A patch of gate is squeezed: screen area over gate area = 2 D^2/(b^2 cos i)
        //   = 2 x 255.5276/(0.006064916 x 0.994668) = 84715.9.  E = 174.555 lx.
        check_close(hall().figure("light.illuminance"), 174.555, printed_digits(3));
        // Matte: G = 1 - pi 1.2^2/(4 x 5^2) = 1 - 0.0452389 = 0.954761. L = E G/pi = 53.0489.
        check_close(hall().figure("light.luminance"), 53.0489, printed_digits(4));
    }

    TEST_CASE("what seat E4 has of the picture") {
        // Eye to left (-2.825, 1.540048, -9.3), right (5.575, 1.540048, -9.3): cos = (-15.749375 +
        // 2.371747 + 86.49)/(9.840852 x 10.951820) = 0.678378.
        check_close(hall().degrees("sight.subtended_width"), 47.28296, printed_digits(5));
        // Eye to bottom (1.375, -0.217275, -9.3), top (1.375, 3.297370, -9.3):
        // cos = (1.890625 - 0.716435 + 86.49)/(9.403607 x 9.962594) = 0.935740.
        check_close(hall().degrees("sight.subtended_height"), 20.65193, printed_digits(5));
        // atan(3.297370/sqrt(1.375^2 + 9.3^2)) = atan(3.297370/9.401097); atan(1.375/9.3).
        check_close(hall().degrees("sight.elevation_top"), 19.32797, printed_digits(5));
        check_close(hall().degrees("sight.off_axis"), 8.41022, printed_digits(5));
        // sqrt(1.375^2 + 1.540048^2 + 9.3^2) = 9.526404, over 8.4.
        check_close(hall().figure("sight.distance_widths"), 1.134096, printed_digits(6));
        // Row E over D: lower edge up 3.1075 - 1.757322 = 1.350178. D = 9.35 - 1.1 = 8.25,
        // R = 1.2 + 3.15 tan 5 - 1.350178 = 0.125411, T = 1.05, N = 1.05 tan 5 = 0.0918631.
        // C = 8.25 x 0.217275/9.3 - 0.125411 = 0.067332.
        check_close(hall().figure("sight.c_value"), 0.067332, printed_digits(6));
    }

    TEST_CASE("sound at seat E4") {
        // 20 degC: c = 343.2, rho = 101325/(287.05 x 293.15) = 1.20412, eta = 1.81341e-5.
        // Holes: open area 0.0452389, d/b = 0.24, Fok factor 0.666518.
        // 4 kHz: w = 25132.7, |s| = 0.6 mm sqrt(w rho/eta) = 24.5108,
        //   2 J1(s)/(s J0(s)) = 0.0577102 - 0.0560210j, tube 0.570795 + 9.600933j, ends 20.574109j,
        //   surface 0.523826; over the open area 24.1964 + 667.0149j; limp sheet 8796.459j beside
        //   it: z = 20.9056 + 620.0551j; over 2 rho c = 826.507: 0.0252939 + 0.750212j.
        // 20 lg |1.0252939 + 0.750212j| = 2.07916 dB.
        check_close(hall().loss_db(4000), 2.07916, printed_digits(5));
        // 1 kHz: z/(2 rho c) = 0.0131954 + 0.190555j.
        // C at (0, 3.53, 0.5) to E4: (-1.375, -1.962548, 9.9), r = 10.185883, -20 lg r = -20.15997.
        // Axis 9.7 down; in its frame across -1.375, up -0.266445, forward 10.089133: 7.903314 off,
        // cos^2 of the roll 0.963809. Coverage is held from 2.2151 c/(2 pi 0.16 sin h) = 1069.438
        // and 2211.002 Hz, so half angles 45 x 1.069438 = 48.12473 and 20 x 2.211002 = 44.22003:
        // -6.0206 x 7.903314^2 (0.963809/48.12473^2 + 0.036191/44.22003^2) = -0.163460 dB.
        // Sheet at cos 9.9/r = 0.971933: 0.253535 dB. Air h = 1.153037 %, 4.66473e-3 x r =
        // 0.047514. 106 + 26.0206 - 20.15997 - 0.16346 - 0.25353 - 0.04751 = 111.3961 dB.
        check_close(hall().level_db(1000), 111.3961, printed_digits(4));
        // L (-2.9, 3.53, 0.5): r 10.207214; C 10.185883; R 10.960712.
        // (10.960712 - 10.185883)/343.2 = 2.25766 ms.
        check_close(1e3 * hall().figure("sound.arrival_spread"), 2.25766, printed_digits(5));
        // Reference: rows A to H, 6.2 to 13.55, middle 9.875; D (9.35) and E (10.4) stand equally
        // near, the first counts, and so does the first of its seats 6 and 7: D6, eye
        // (-0.275, 1.475589, 9.35). Its level: r 9.089484, 132.0206 - 19.17079 - 0.04275 - 0.25422
        // - 0.04240 = 112.5104. Power for 105 dB: 400 x 10^(-0.751045) = 70.960 W.
        CHECK(hall().reference_seat() == "D6");
        // What equalising the sheet adds goes on top.
        const double boost = std::pow(10.0, 0.1 * hall().figure("sound.equalisation_headroom"));
        check_close(hall().figure("sound.amplifier_power") / boost, 70.960, printed_digits(3));
        // 1.2 mm/tan 1' = 1.2 mm x 3437.747 = 4.12530.
        check_close(hall().figure("sound.hole_visible_from"), 4.12530, printed_digits(5));
    }
}
