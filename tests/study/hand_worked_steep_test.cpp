// SPDX-License-Identifier: MIT
//
// The steep room worked by hand: seat G6, 1.85, the digital machine before a curved gain screen.
// Lengths in m, angles in degrees, unless a unit is given. Each line was worked with plain
// arithmetic from the numbers of layouts/steep-240.json; results are rounded to the digits shown,
// nothing before them.
#include "study/hand_worked.hpp"

#include <cmath>

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

namespace {

const tests::HandWorked& steep() {
    static const tests::HandWorked worked(
        {.room = "steep-240", .projector = "Digital 4K", .format = "1.85", .seat = "G6"});
    return worked;
}

}  // namespace

TEST_SUITE("study/hand_worked steep") {
    TEST_CASE("the room file has the numbers that the working starts from") {
        const room::Screen& s = steep().layout().screen;
        CHECK(s.width_m == 13.6);
        CHECK(s.height_m == 7.35);
        CHECK(s.sill_m == 0.8);
        CHECK(s.setback_m == 1.7);
        CHECK(s.radius_m == 34.34);
        CHECK(s.surface.peak_gain == 1.4);
        const room::SeatBlock& b = steep().layout().seating.front();
        CHECK(b.first_row_back_m == 10.7);
        CHECK(b.row_spacing_m == 1.15);
        CHECK(b.wanted_c_m == 0.15);
        const room::Projector& p = steep().projector();
        CHECK(p.up_m == 6.3);
        CHECK(p.back_m == 25.5);
        CHECK(p.flux.measured_flux_lm == 12000.0);
    }

    TEST_CASE("eye of seat G6 and the opening of 1.85") {
        // Equal clearance: eye heights over the lower edge (0.8) at distances from it (back 1.7),
        // R' = (R + 0.15)(D + 1.15)/D:  A  9.00 0.400000, B 10.15 0.620278, C 11.30 0.857551,
        //   D 12.45 1.110089, E 13.60 1.376483, F 14.75 1.655560, G 15.90 1.946333.
        // Closed form for G: 15.9 (0.4/9 + 0.15 x sum of 1/D over A to F, 0.519776) = 1.946333.
        // Row G is not shifted: 20 seats at 0.57 and two aisles of 1.2 make 13.8; seat 6 stands
        // -6.9 + 5.5 x 0.57 + 1.2 = -2.565 along the arc of radius 18 + 6 x 1.15 = 24.9 about
        // back 10.7 - 18 = -7.3: -2.565/24.9 = -5.902156 deg.
        check_close(steep().seat().eye.x, -2.560466, printed_digits(6));
        check_close(steep().seat().eye.y, 2.746333, printed_digits(6));
        check_close(steep().seat().eye.z, 17.468004, printed_digits(6));
        // 13.6/1.85 = 7.351351 is higher than the frame's 7.35, so 7.35 x 1.85 = 13.5975 wide.
        // Half angle asin(6.79875/34.34) = 11.419059, arc 2 x 34.34 x 0.199300 = 13.687936, area
        // 13.687936 x 7.35 = 100.60633; the side edges stand 34.34 (1 - cos) = 0.679747 forward.
        check_close(steep().figure("picture.width"), 13.5975, printed_digits(6));
        check_close(steep().figure("picture.height"), 7.35, printed_digits(6));
        check_close(steep().figure("picture.area"), 100.60633, printed_digits(5));
    }

    TEST_CASE("throw, focal length and angles") {
        // Axis 2 down from (0, 6.3, 25.5) to the middle of the cylinder, back 1.7:
        // D = 23.8/cos 2 = 23.81451, at up 6.3 - 23.8 tan 2 = 5.468886; D/W = 1.751389.
        check_close(steep().figure("picture.throw"), 23.81451, printed_digits(5));
        check_close(steep().figure("picture.throw_ratio"), 1.751389, printed_digits(6));
        // A = 3996 x 7.56 um = 30.20976 mm; f = A D/(W + A) = 30.20976 x 23.81451/13.62770976.
        check_close(1e3 * steep().figure("picture.focal_length"), 52.79174, printed_digits(5));
        check_close(1e3 * steep().figure("picture.focal_length_field"), 52.90903,
                    printed_digits(5));
        check_close(steep().degrees("picture.angle_down"), 2.0, printed_digits(6));
        check_close(steep().degrees("picture.angle_across"), 0.0, printed_digits(6));
    }

    TEST_CASE("keystone and bow from rays on the cylinder") {
        // Zoom at 50.97 mm: b = f D/(D - f) = 51.07932 mm. Shift -0.1349 x 16.3296 = -2.202863 mm.
        // Axis a (0, -0.0348995, -0.999391), up u (0, 0.999391, -0.0348995). Corner directions
        // (+-15.10488, y u + b a) mm with y = +-8.1648 - 2.202863:
        //   top (+-15.10488, 4.175662, -51.256277), bottom (+-15.10488, -12.143990, -50.686382).
        // Cylinder x^2 + (z - 36.04)^2 = 34.34^2, lens at z - 36.04 = -10.54:
        //   t^2 (dx^2 + dz^2) - 2 t 10.54 dz + 10.54^2 - 34.34^2 = 0
        //   top     0.002855363 t^2 + 2 x 0.5402412 t - 1068.144 = 0   t = 451.01715
        //           (+-6.812560, 8.183295, 2.382540)
        //   bottom  0.002797267 t^2 + 2 x 0.5342345 t - 1068.144 = 0   t = 455.79821
        //           (+-6.884777, 0.764791, 2.397238)
        // Widths 13.625120 and 13.769554: 2 x 0.144434/27.394674 = 0.0105447; left equals right.
        check_close(steep().figure("picture.keystone_vertical"), 0.0105447, printed_digits(7));
        check_close(steep().figure("picture.keystone_horizontal"), 0.0, printed_digits(7));
        // In the middle of an edge x = 0 and z = 1.7: t = 23.8/51.256277 mm = 464.33337, up
        // 8.238899; below t = 23.8/50.686382 mm = 469.55413, up 0.597739. Over the corners:
        //   8.238899 - 8.183295 = 0.055604,  0.597739 - 0.764791 = -0.167052.
        check_close(steep().figure("picture.bow_top"), 0.055604, printed_digits(6));
        check_close(steep().figure("picture.bow_bottom"), -0.167052, printed_digits(6));
    }

    TEST_CASE("light from the lens to seat G6") {
        // Inside the glass asin(sin 2/1.52) = 1.315638: t = exp(-0.016/cos) = 0.984123;
        // R = 0.005: T = 0.995^2 t/(1 - R^2 t^2) = 0.974330.
        check_close(steep().figure("light.port_transmittance"), 0.974330, printed_digits(6));
        // Imager 30.96576 x 16.3296 mm: r_corner^2 = 306.38353 mm2, k = 0.16/306.38353 =
        // 5.222213e-4 per mm2. w h [1 - k (w^2 + h^2)/12]: whole 478.69002, used 467.99613 mm2;
        // ratio 0.977660. Flux 12000 x 0.977660 x 0.974330 = 11430.76 lm.
        check_close(steep().figure("light.flux"), 11430.76, printed_digits(2));
        // Lens to picture centre (0, 4.475, 1.7): (0, -1.825, -23.8), R = 23.869869; along the axis
        // 23.849193, along u -0.993280: gate point y = 51.07932 x -0.993280/23.849193 + 2.202863
        // = 0.075492 mm, rel = 1 - k y^2 = 0.999997. The ray's way in the gate
        // p = sqrt(51.07932^2 + 2.127371^2) = 51.123606 mm, cos i = 23.8/R = 0.997073.
        // Solid angle b dA/p^3 spreads to R^2/cos i: J = b R^2/(p^3 cos i) = 218450.9.
        // E = 12000 x 0.974330 x rel/478.69002e-6/J = 2.442484e7/218450.9 = 111.8093 lx.
        check_close(steep().figure("light.illuminance"), 111.8093, printed_digits(4));
        // Mirror direction (0, -0.0764562, 0.997073); to the eye (-2.560466, -1.728667, 15.768004)
        // /16.067801 = (-0.159354, -0.107586, 0.981342): cos = 0.986695, 9.356839 off the lobe.
        // Half of the peak is all matte (0.7), so the lobe is half at 34:
        // G = 0.7 + 0.7 x 2^-(9.356839/34)^2 = 1.364201. L = E G/pi = 48.5519.
        check_close(steep().figure("light.luminance"), 48.5519, printed_digits(4));
    }

    TEST_CASE("what seat G6 has of the picture") {
        // Eye to left (-4.238284, 1.728667, -15.088256), right (9.359216, 1.728667, -15.088256):
        // cos = 190.976743/(15.767270 x 17.839246) = 0.678965.
        check_close(steep().degrees("sight.subtended_width"), 47.23717, printed_digits(5));
        // Top (2.560466, 5.403667, -15.768004), bottom (2.560466, -1.946333, -15.768004):
        // cos = 244.668601/(16.863735 x 16.092674) = 0.901563.
        check_close(steep().degrees("sight.subtended_height"), 25.63567, printed_digits(5));
        // atan(5.403667/15.974540); atan(2.560466/15.768004); 16.067801/13.5975.
        check_close(steep().degrees("sight.elevation_top"), 18.68901, printed_digits(5));
        check_close(steep().degrees("sight.off_axis"), 9.22339, printed_digits(5));
        check_close(steep().figure("sight.distance_widths"), 1.181673, printed_digits(6));
        // Row G over F, as the floor was made: 14.75 x 1.946333/15.9 - 1.655560 = 0.15.
        check_close(steep().figure("sight.c_value"), 0.15, printed_digits(6));
    }

    TEST_CASE("sound at seat G6") {
        // 21 degC: c = 343.7849, rho = 1.200025, eta = 1.818187e-5, 2 rho c = 825.1007.
        // Holes at 60 degrees: open area pi 0.5^2/(2 sqrt 3 x 2.1^2) = 0.0514115, Fok 0.669090.
        // 8 kHz: |s| = 14.3996, 2 J1/(s J0) = 0.0982774 - 0.0933305j, tube 1.918085 + 18.531791j,
        //   ends 17.152734j, surface 0.740516; z over the open area 51.7121 + 694.0955j, beside the
        //   limp sheet 16084.954j: 47.5218 + 665.5295j; over 2 rho c 0.0575952 + 0.806604j.
        // 20 lg |1.0575952 + 0.806604j| = 2.47757 dB.
        check_close(steep().loss_db(8000), 2.47757, printed_digits(5));
        // C (0, 5.21, 0.6) to G6: (-2.560466, -2.463667, 16.868004), r = 17.238190, -20 lg r =
        // -24.729833. Axis 7.9 down: across -2.560466, up -0.121871, forward 17.046535; 8.551751
        // off, cos^2 of the roll 0.997740. Held from 1071.261 and 1792.388 Hz: half angles
        // 48.20674 and 44.80970; -6.0206 x 8.551751^2 (...) = -0.189535 dB.
        // The path meets the cylinder at 0.0652363 of its way, x -0.167035: normal
        // (0.00486416, 0, 0.999988), cos 0.977791; z/(2 rho c) at 1 kHz 0.0244002 + 0.108058j:
        // 0.250802 dB. Air 4.771649e-3 x r = 0.082255 dB.
        // 108 + 29.542425 - 24.729833 - 0.189535 - 0.250802 - 0.082255 = 112.2900 dB.
        check_close(steep().level_db(1000), 112.2900, printed_digits(4));
        // L (-4.9, 5.21, 0.8) 17.010744, C 17.238190, R 18.426898: 1.416153/343.7849 = 4.11930 ms.
        check_close(1e3 * steep().figure("sound.arrival_spread"), 4.11930, printed_digits(5));
        // Middle of the rows 17.025: F (16.45) and G (17.6) equally near, the first counts. Row F
        // is shifted by 0.285, so seat F10 is its middle: eye (0, 2.455560, 16.45), r 16.087555,
        // 137.542425 - 24.129801 - 0.011501 - 0.253025 - 0.076764 = 113.0713 dB.
        // 900 x 10^((105 - 113.0713)/10) = 140.317 W.
        CHECK(steep().reference_seat() == "F10");
        // What equalising the sheet adds goes on top.
        const double boost = std::pow(10.0, 0.1 * steep().figure("sound.equalisation_headroom"));
        check_close(steep().figure("sound.amplifier_power") / boost, 140.317, printed_digits(3));
        // 0.5 mm/tan 1' = 0.5 mm x 3437.747 = 1.71887.
        check_close(steep().figure("sound.hole_visible_from"), 1.71887, printed_digits(5));
    }
}
