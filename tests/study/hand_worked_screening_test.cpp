// SPDX-License-Identifier: MIT
//
// The screening room worked by hand: seat D2, 2.39, the laser machine set level with a slight roll
// and a lens shift, before a beaded (retro-reflective) sheet without holes. Lengths in m, angles in
// degrees, unless a unit is given. Each line was worked with plain arithmetic from the numbers of
// layouts/screening-24.json; results are rounded to the digits shown, nothing before them.
#include "study/hand_worked.hpp"

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

namespace {

const tests::HandWorked& screening() {
    static const tests::HandWorked worked(
        {.room = "screening-24", .projector = "Digital laser", .format = "2.39", .seat = "D2"});
    return worked;
}

}  // namespace

TEST_SUITE("study/hand_worked screening") {
    TEST_CASE("the room file has the numbers that the working starts from") {
        const room::Screen& s = screening().layout().screen;
        CHECK(s.width_m == 4.2);
        CHECK(s.height_m == 2.27);
        CHECK(s.sill_m == 0.8);
        CHECK(s.setback_m == 0.35);
        CHECK(s.sheet_mass_kg_m2 == 0.6);
        CHECK(s.surface.peak_gain == 1.8);
        const room::SeatBlock& b = screening().layout().seating.front();
        CHECK(b.first_row_back_m == 3.7);
        CHECK(b.row_spacing_m == 1.15);
        const room::Projector& p = screening().projector();
        CHECK(p.up_m == 2.5);
        CHECK(p.back_m == 9.75);
        CHECK(p.aim.roll_rad == base::radians(0.3));
        CHECK(p.flux.measured_flux_lm == 1070.0);
    }

    TEST_CASE("eye of seat D2 and the opening of 2.39") {
        // Six seats at 0.62: seat 2 stands (2 - 3.5) 0.62 = -0.93 across. Row D is the fourth: back
        // 3.7 + 3 x 1.15 = 7.15, on the dais of 0.12; eye 1.2 above it.
        check_close(screening().seat().eye.x, -0.93, printed_digits(6));
        check_close(screening().seat().eye.y, 1.32, printed_digits(6));
        check_close(screening().seat().eye.z, 7.15, printed_digits(6));
        // Nothing moves: the largest 2.39 in 4.2 x 2.27 is 4.2 wide, 4.2/2.39 = 1.757322 high,
        // about the frame's centre, up 0.8 + 1.135 = 1.935; area 7.380753.
        check_close(screening().figure("picture.width"), 4.2, printed_digits(6));
        check_close(screening().figure("picture.height"), 1.757322, printed_digits(6));
        check_close(screening().figure("picture.area"), 7.380753, printed_digits(6));
    }

    TEST_CASE("throw, focal length and angles of the laser machine") {
        // The axis runs level at 2.5: D = 9.75 - 0.35 = 9.4, D/W = 2.238095.
        check_close(screening().figure("picture.throw"), 9.4, printed_digits(6));
        check_close(screening().figure("picture.throw_ratio"), 2.238095, printed_digits(6));
        // A = 4096 x 5.4 um = 22.1184 mm: 22.1184 x 9.4/4.2221184 mm; field 22.1184 x 9.4/4.2 mm.
        check_close(1e3 * screening().figure("picture.focal_length"), 49.24375, printed_digits(5));
        check_close(1e3 * screening().figure("picture.focal_length_field"), 49.50309,
                    printed_digits(5));
        check_close(screening().degrees("picture.angle_down"), 0.0, printed_digits(6));
        check_close(screening().degrees("picture.angle_across"), 0.0, printed_digits(6));
    }

    TEST_CASE("corners of a square-on picture, and no keystone") {
        // Zoom at 48.6 mm: every length in the gate comes out D/b = D/f - 1 = 192.415638 times as
        // long. Picture 22.1184 and 9.2664 mm: 4.255926 x 1.783000. Shift 0.0007 x 22.1184 =
        // 0.01548288 mm right, 0.3175 x 9.2664 = 2.942082 mm down. Roll 0.3 clockwise: right
        // (0.9999863, -0.0052360), up (0.0052360, 0.9999863). From (0, 2.5), times D/b:
        //   top left     (-11.04371712, 1.691118) mm  ->  (-2.123251, 2.836519)
        //   top right    ( 11.07468288, 1.691118) mm  ->  ( 2.132617, 2.814236)
        //   bottom right ( 11.07468288, -7.575282) mm ->  ( 2.123281, 1.031260)
        //   bottom left  (-11.04371712, -7.575282) mm ->  (-2.132587, 1.053544)
        // An image like the gate has no keystone.
        check_close(screening().figure("picture.keystone_vertical"), 0.0, printed_digits(9));
        check_close(screening().figure("picture.keystone_horizontal"), 0.0, printed_digits(9));
        // It passes the opening's corners (+-2.1, 1.056339 and 2.813661) on all four sides, so the
        // overfill is (4.255926 x 1.783000 - 7.380753)/7.380753 = 0.207564/7.380753 and the crop
        // 0.207564/7.588317.
        check_close(screening().figure("picture.overfill"), 0.028122, printed_digits(6));
        check_close(screening().figure("picture.crop"), 0.027353, printed_digits(6));
    }

    TEST_CASE("light from the lens to seat D2") {
        // Square to the axis: t = exp(-2 x 0.004) = 0.992032, R = 0.01 a surface. One pane:
        // T1 = 0.99^2 t/(1 - R^2 t^2) = 0.972386, r1 = R + 0.99^2 R t^2/(1 - R^2 t^2) = 0.0196464.
        // Two: T1^2/(1 - r1^2) = 0.945900.
        check_close(screening().figure("light.port_transmittance"), 0.945900, printed_digits(6));
        // Imager 22.1184 x 11.664 mm: r_corner^2 = 156.31813 mm2, k = 0.15/156.31813 = 9.595816e-4
        // per mm2; hot spot -0.02 x 22.1184 = -0.442368 mm.
        // w h [1 - k ((w^2 + h^2)/12 + 0.442368^2)]: whole 245.04112, used 195.49403 mm2; ratio
        // 0.797801. Flux 1070 x 0.797801 x 0.945900 = 807.465 lm.
        check_close(screening().figure("light.flux"), 807.465, printed_digits(3));
        // Picture centre against the axis: (0, -0.565). In the gate, right -0.565 x
        // -0.0052360/192.4 = 0.01537463 mm less the shift 0.01548288: -0.000108; up -0.565 x
        // 0.9999863/192.4 = -2.936311 + 2.942082 = 0.005770 mm. From the hot spot 0.442260,
        // 0.005770: rel = 1 - k 0.195627 = 0.999812. E = 1070 x 0.945900/245.04112e-6 x rel/(D/b)^2
        // = 4.130380e6 x 0.999812/37023.78 = 111.5393 lx.
        check_close(screening().figure("light.illuminance"), 111.5393, printed_digits(4));
        // From the centre back to the lens (0, 0.565, 9.4)/9.416965, to the eye
        // (-0.93, -0.615, 6.8)/6.890800: cos = (-0.347475 + 63.92)/64.890422 = 0.979690, 11.567131
        // off the lobe. Whole gain half at 25: w = 25/sqrt(-lg2((0.9 - 0.8)/(1.8 - 0.8))) =
        // 25/sqrt 3.321928 = 13.716550; G = 0.8 + 2^-(11.567131/13.716550)^2 = 1.410833.
        // L = E G/pi = 50.0903.
        check_close(screening().figure("light.luminance"), 50.0903, printed_digits(4));
    }

    TEST_CASE("what seat D2 has of the picture") {
        // Eye to left (-1.17, 0.615, -6.8), right (3.03, 0.615, -6.8):
        // cos = 43.073125/(6.927274 x 7.469881) = 0.832397.
        check_close(screening().degrees("sight.subtended_width"), 33.65428, printed_digits(5));
        // Top (0.93, 1.493661, -6.8), bottom (0.93, -0.263661, -6.8):
        // cos = 46.711080/(7.023954 x 6.868363) = 0.968244.
        check_close(screening().degrees("sight.subtended_height"), 14.47784, printed_digits(5));
        // atan(1.493661/6.863301); atan(0.93/6.8); 6.890800/4.2.
        check_close(screening().degrees("sight.elevation_top"), 12.27784, printed_digits(5));
        check_close(screening().degrees("sight.off_axis"), 7.78772, printed_digits(5));
        check_close(screening().figure("sight.distance_widths"), 1.640667, printed_digits(6));
        // Row D over C: lower edge up 1.935 - 0.878661 = 1.056339. D = 6 - 0.35 = 5.65, R = 1.2 -
        // 1.056339 = 0.143661, N = 0.12, T = 1.15: 5.65 x 0.263661/6.8 - 0.143661 = 0.075410.
        check_close(screening().figure("sight.c_value"), 0.075410, printed_digits(6));
    }

    TEST_CASE("sound at seat D2") {
        // 22 degC: c = 343.2 sqrt(295.15/293.15) = 344.3687, rho = 1.195959, 2 rho c = 823.7018.
        // Without holes the sheet is its mass alone: at 2 kHz w m/(2 rho c) = 12566.37 x 0.6/
        // 823.7018 = 9.153583; 10 lg(1 + 9.153583^2) = 19.28335 dB.
        check_close(screening().loss_db(2000), 19.28335, printed_digits(5));
        // C stands under the sheet, (0, 0.5, 0.3): to D2 (-0.93, 0.82, 6.85), r = 6.961307,
        // -20 lg r = -16.853816. Axis 7.8 up: cos of the angle off it (0.82 x 0.135716 + 6.85 x
        // 0.990748)/r, 7.738552. Piston k a = 2 pi 1000 x 0.083/c = 1.514378, x = 0.203915:
        // 20 lg(2 J1(x)/x) = 20 lg(1 - x^2/8 + x^4/192) = -0.045186 dB.
        // Air h = 1.303828 %: 5.014834e-3 x r = 0.034910 dB.
        // 94 + 24.771213 - 16.853816 - 0.045186 - 0.034910 = 101.8373 dB.
        check_close(screening().level_db(1000), 101.8373, printed_digits(4));
        // L (-2.5, 1.45, 0.3) 7.028819, C 6.961307, R 7.661873: 0.700566/344.3687 = 2.03435 ms.
        check_close(1e3 * screening().figure("sound.arrival_spread"), 2.03435, printed_digits(5));
        // The layout names C3, eye (-0.31, 1.2, 6): r 5.751182; 118.771213 - 15.195143 - 0.007718 -
        // 0.028841 = 103.5395 dB; 300 x 10^((103 - 103.5395)/10) = 264.954 W.
        CHECK(screening().reference_seat() == "C3");
        check_close(screening().figure("sound.amplifier_power"), 264.954, printed_digits(3));
        // No holes, so there is no distance within which they are seen.
        CHECK_FALSE(screening().has_value("sound.hole_visible_from"));
    }
}
