// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "report/plate_sheet.hpp"

#include <array>
#include <cstdio>

namespace rakeline::report {
namespace {

constexpr const char* kOpening = "OPENING";
constexpr const char* kAperture = "APERTURE";
constexpr const char* kCentre = "CENTRE";
constexpr const char* kNotes = "NOTES";
constexpr double kLetter_mm = 2.0;
constexpr double kLine_mm = 3.2;
constexpr double kOverhang_mm = 3.0;

/// The code point that starts at text[i]; moves i to its last byte. Names in layouts are UTF-8.
unsigned long code_point(const std::string& text, std::size_t& i) {
    const auto first = static_cast<unsigned char>(text[i]);
    const int more = first >= 0xF0 ? 3 : first >= 0xE0 ? 2 : first >= 0xC0 ? 1 : 0;
    unsigned long code = more == 0 ? first : first & (0x3Fu >> more);
    for (int k = 0; k < more && i + 1 < text.size(); ++k)
        code = (code << 6) | (static_cast<unsigned char>(text[++i]) & 0x3Fu);
    return code;
}

/// R12 text is ASCII: other letters as \U+ and four hexadecimal digits, beyond those "?"; no
/// control characters.
std::string ascii(const std::string& text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const unsigned long code = code_point(text, i);
        if (code < 0x20 || code == 0x7F) {
            out += ' ';
        } else if (code < 0x7F) {
            out += static_cast<char>(code);
        } else if (code > 0xFFFF) {
            out += '?';
        } else {
            char buffer[16];
            std::snprintf(buffer, sizeof buffer, "\\U+%04lX", code);
            out += buffer;
        }
    }
    return out;
}

/// Group codes and values, two lines each.
class Groups {
public:
    Groups& add(int code, const std::string& value) {
        bytes_ += std::to_string(code) + "\n" + value + "\n";
        return *this;
    }
    Groups& add(int code, double mm) { return add(code, base::fixed_text(mm, 4)); }
    Groups& add(int code, int value) { return add(code, std::to_string(value)); }
    Groups& point(glm::dvec2 mm) { return add(10, mm.x).add(20, mm.y).add(30, 0.0); }
    Groups& start(const char* entity, const char* layer) { return add(0, entity).add(8, layer); }
    const std::string& bytes() const { return bytes_; }

private:
    std::string bytes_;
};

void closed_polyline(Groups& out, const char* layer, const std::vector<glm::dvec2>& points_mm) {
    out.start("POLYLINE", layer).add(66, 1).point({0.0, 0.0}).add(70, 1);
    for (const glm::dvec2 p : points_mm)
        out.start("VERTEX", layer).point(p);
    out.start("SEQEND", layer);
}

void line(Groups& out, glm::dvec2 from, glm::dvec2 to) {
    out.start("LINE", kCentre).point(from).add(11, to.x).add(21, to.y).add(31, 0.0);
}

void header(Groups& out, glm::dvec2 reach_mm) {
    out.add(999, "Units: millimetres, full size");
    out.add(0, "SECTION").add(2, "HEADER");
    out.add(9, "$ACADVER").add(1, "AC1009");
    out.add(9, "$EXTMIN").point(-reach_mm);
    out.add(9, "$EXTMAX").point(reach_mm);
    out.add(0, "ENDSEC");
}

void tables(Groups& out) {
    struct Layer {
        const char* name;
        int colour;
    };
    constexpr std::array<Layer, 4> layers{
        {{kOpening, 7}, {kAperture, 8}, {kCentre, 8}, {kNotes, 7}}};
    const std::string table = "TABLE", end = "ENDTAB", continuous = "CONTINUOUS";
    out.add(0, "SECTION").add(2, "TABLES");
    out.add(0, table).add(2, "LTYPE").add(70, 1);
    out.add(0, "LTYPE").add(2, continuous).add(70, 0);
    out.add(3, "Solid line").add(72, 65).add(73, 0).add(40, 0.0).add(0, end);
    out.add(0, table).add(2, "LAYER").add(70, static_cast<int>(layers.size()));
    for (const Layer& layer : layers) {
        out.add(0, "LAYER").add(2, std::string(layer.name)).add(70, 0);
        out.add(62, layer.colour).add(6, continuous);
    }
    out.add(0, end).add(0, "ENDSEC");
}

void text(Groups& out, glm::dvec2 at, const std::string& words) {
    out.start("TEXT", kNotes).point(at).add(40, kLetter_mm).add(1, ascii(words));
}

void notes(Groups& out, const PlateSheet& sheet, glm::dvec2 reach_mm) {
    const double top = 1e3 * picture::seen({0.0, 0.5 * sheet.plate.aperture_m.y}, sheet.view).y;
    text(out, {0.5, top < 0.0 ? top - kLetter_mm - 0.5 : top + 0.5}, kPictureTop);
    double y = -reach_mm.y - 2.0 * kLine_mm;
    for (const std::string& words : plate_words(sheet)) {
        text(out, {-reach_mm.x, y}, words);
        y -= kLine_mm;
    }
}

}  // namespace

std::string plate_dxf(const PlateSheet& given) {
    PlateSheet sheet = given;
    sheet.tenfold = false;  // a drawing file is at full size: its reader zooms
    const glm::dvec2 half = 0.5e3 * sheet.plate.aperture_m;
    const glm::dvec2 reach = half + kOverhang_mm;
    auto outline = picture::outline_seen(sheet.plate, sheet.view);
    for (glm::dvec2& p : outline)
        p *= 1e3;
    Groups out;
    header(out, reach);
    tables(out);
    out.add(0, "SECTION").add(2, "ENTITIES");
    closed_polyline(out, kOpening, outline);
    closed_polyline(out, kAperture,
                    {{-half.x, -half.y}, {half.x, -half.y}, {half.x, half.y}, {-half.x, half.y}});
    line(out, {-reach.x, 0.0}, {reach.x, 0.0});
    line(out, {0.0, -reach.y}, {0.0, reach.y});
    notes(out, sheet, reach);
    out.add(0, "ENDSEC").add(0, "EOF");
    return out.bytes();
}

}  // namespace rakeline::report
