// SPDX-License-Identifier: MIT
#include "drawing/luminance_shading.hpp"
#include "drawing/studied_room.hpp"
#include "report/report.hpp"
#include "report/surface.hpp"
#include "support/check.hpp"

#include <cstdint>
#include <cstring>

using namespace rakeline;

namespace {

struct Reader {
    const std::string& bytes;
    std::size_t at = 0;
};

cairo_status_t read_bytes(void* closure, unsigned char* data, unsigned count) {
    auto& reader = *static_cast<Reader*>(closure);
    if (reader.at + count > reader.bytes.size()) return CAIRO_STATUS_READ_ERROR;
    std::memcpy(data, reader.bytes.data() + reader.at, count);
    reader.at += count;
    return CAIRO_STATUS_SUCCESS;
}

struct Picture {
    report::Surface surface;
    int width() const { return cairo_image_surface_get_width(surface.get()); }
    int height() const { return cairo_image_surface_get_height(surface.get()); }
    /// 0xAARRGGBB.
    std::uint32_t pixel(int x, int y) const {
        const unsigned char* data = cairo_image_surface_get_data(surface.get());
        std::uint32_t word = 0;
        std::memcpy(&word, data + y * cairo_image_surface_get_stride(surface.get()) + 4 * x, 4);
        return word;
    }
};

Picture decoded(const std::string& bytes) {
    Reader reader{bytes};
    Picture picture{
        report::Surface(cairo_image_surface_create_from_png_stream(read_bytes, &reader))};
    REQUIRE(cairo_surface_status(picture.surface.get()) == CAIRO_STATUS_SUCCESS);
    return picture;
}

}  // namespace

TEST_SUITE("report/png") {
    TEST_CASE("round trip: an image's pixels come back from its PNG, rows from the top") {
        std::vector<unsigned char> rgba;
        for (int y = 0; y < 20; ++y)
            for (int x = 0; x < 30; ++x)
                for (const int c : {8 * x, 12 * y, 200, 255})
                    rgba.push_back(static_cast<unsigned char>(c));
        const auto bytes = report::image_png(30, 20, rgba);
        REQUIRE(bool(bytes));
        const Picture picture = decoded(*bytes);
        CHECK(picture.width() == 30);
        CHECK(picture.height() == 20);
        for (const auto& [x, y] : {std::pair{0, 0}, {29, 0}, {0, 19}, {13, 7}}) {
            const auto expected = static_cast<std::uint32_t>(8 * x) << 16 |
                                  static_cast<std::uint32_t>(12 * y) << 8 | 200u;
            CHECK((picture.pixel(x, y) & 0xFFFFFFu) == expected);
        }
    }

    TEST_CASE("half-clear pixels keep their colour") {
        std::vector<unsigned char> rgba;
        for (int i = 0; i < 16 * 16; ++i)
            rgba.insert(rgba.end(), {200, 100, 0, 128});
        const auto bytes = report::image_png(16, 16, rgba);
        REQUIRE(bool(bytes));
        const std::uint32_t word = decoded(*bytes).pixel(3, 3);
        CHECK((word >> 24) == 128);
        // Cairo hands back colours times alpha: 200 * 128 / 255 = 100.4.
        CHECK(((word >> 16) & 0xFFu) == 100);
    }

    TEST_CASE("a scale in the corner leaves the rest of the picture as it was") {
        const std::vector<unsigned char> rgba(std::size_t{4} * 600 * 300, 255);
        const auto scale = drawing::luminance_scale_drawing({.least_cdm2 = 35.0, .most_cdm2 = 60.0},
                                                            24.0, base::UnitSystem::metric);
        const auto bytes = report::image_png(600, 300, rgba, scale);
        REQUIRE(bool(bytes));
        const Picture picture = decoded(*bytes);
        for (const auto& [x, y] : {std::pair{5, 5}, {599, 0}, {450, 290}, {5, 150}})
            CHECK((picture.pixel(x, y) & 0xFFFFFFu) == 0xFFFFFFu);
        CHECK((picture.pixel(20, 270) & 0xFFFFFFu) != 0xFFFFFFu);
    }

    TEST_CASE("refuses: sizes that no picture has") {
        CHECK_FALSE(report::image_png(0, 10, {}));
        const auto wide = report::drawing_png({}, 40000, 100, base::UnitSystem::metric, true);
        REQUIRE_FALSE(wide);
        CHECK(wide.problems()[0].what.find("40000") != std::string::npos);
    }

    TEST_CASE("a drawing is painted at the size asked for, on the ground of its theme") {
        const auto plan = drawing::plan(tests::studied("screening-24"), {});
        for (const bool paper : {false, true}) {
            const auto bytes = report::drawing_png(plan, 300, 420, base::UnitSystem::metric, paper);
            REQUIRE(bool(bytes));
            const Picture picture = decoded(*bytes);
            CHECK(picture.width() == 300);
            CHECK(picture.height() == 420);
            const std::uint32_t ground = paper ? 0xF7F4EC : 0x14161A;
            CHECK((picture.pixel(1, 1) & 0xFFFFFFu) == ground);
            int inked = 0;
            for (int y = 0; y < 420; ++y)
                for (int x = 0; x < 300; ++x)
                    inked += (picture.pixel(x, y) & 0xFFFFFFu) != ground;
            CHECK(inked > 5000);
        }
    }

    TEST_CASE("the same drawing gives the same bytes") {
        const auto section = drawing::long_section(tests::studied("screening-24"), {});
        const auto a = report::drawing_png(section, 600, 300, base::UnitSystem::metric, true);
        const auto b = report::drawing_png(section, 600, 300, base::UnitSystem::metric, true);
        REQUIRE(bool(a));
        REQUIRE(bool(b));
        CHECK(*a == *b);
    }
}
