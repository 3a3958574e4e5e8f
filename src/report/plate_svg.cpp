// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "report/plate_sheet.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

constexpr double kMargin_mm = 10.0;
constexpr double kLetter_mm = 3.0;
constexpr double kLine_mm = 4.6;
constexpr double kLetterWidth = 0.62;  ///< of a sans-serif's size, generous
constexpr double kBar_mm = 50.0;
constexpr double kOverhang_mm = 3.0;  ///< of the centre lines past the aperture, on paper

std::string mm(double value) {
    return base::fixed_text(value, 4);
}

std::string escaped(const std::string& text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            default:
                // XML 1.0 has no way to write the other control characters.
                out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
        }
    }
    return out;
}

double letters(const std::string& text) {
    return static_cast<double>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    }));
}

/// One drawing of the plate around a point of the page.
struct Drawn {
    glm::dvec2 middle_mm{0.0};  ///< of the aperture, from the page's top left
    double scale = 1.0;
    const char* id = "plate";
};

std::string line(glm::dvec2 from, glm::dvec2 to) {
    return "<path d=\"M" + mm(from.x) + " " + mm(from.y) + "L" + mm(to.x) + " " + mm(to.y) +
           "\" fill=\"none\" stroke=\"#777\" stroke-width=\"0.08\"/>\n";
}

std::string outline_path(const PlateSheet& sheet, const Drawn& drawn) {
    std::string path = "<path id=\"" + std::string(drawn.id) + "\" d=\"";
    char verb = 'M';
    for (const glm::dvec2 p : picture::outline_seen(sheet.plate, sheet.view)) {
        // A page's y runs down.
        const glm::dvec2 at = drawn.middle_mm + 1e3 * drawn.scale * glm::dvec2(p.x, -p.y);
        path += verb + mm(at.x) + " " + mm(at.y);
        verb = 'L';
    }
    return path + "Z\" fill=\"none\" stroke=\"#000\" stroke-width=\"0.15\"/>\n";
}

std::string drawing(const PlateSheet& sheet, const Drawn& drawn) {
    const glm::dvec2 half = 0.5e3 * drawn.scale * sheet.plate.aperture_m;
    const glm::dvec2 m = drawn.middle_mm;
    const glm::dvec2 reach = half + kOverhang_mm;
    return "<rect x=\"" + mm(m.x - half.x) + "\" y=\"" + mm(m.y - half.y) + "\" width=\"" +
           mm(2.0 * half.x) + "\" height=\"" + mm(2.0 * half.y) +
           "\" fill=\"none\" stroke=\"#777\" stroke-width=\"0.08\" stroke-dasharray=\"1 0.6\"/>\n" +
           line({m.x - reach.x, m.y}, {m.x + reach.x, m.y}) +
           line({m.x, m.y - reach.y}, {m.x, m.y + reach.y}) + outline_path(sheet, drawn);
}

std::string text_at(glm::dvec2 at, const std::string& text) {
    return "<text x=\"" + mm(at.x) + "\" y=\"" + mm(at.y) + "\">" + escaped(text) + "</text>\n";
}

/// A bar to lay a ruler on: a print that was fitted to the paper is no longer true.
std::string bar(double top_mm) {
    const double y = top_mm + 4.0;
    return line({kMargin_mm, y}, {kMargin_mm + kBar_mm, y}) +
           line({kMargin_mm, y - 1.5}, {kMargin_mm, y + 1.5}) +
           line({kMargin_mm + kBar_mm, y - 1.5}, {kMargin_mm + kBar_mm, y + 1.5});
}

struct Page {
    double width_mm = 0.0;
    double height_mm = 0.0;
    std::string body;
};

/// Where the picture has its top, so that nobody files the plate upside down.
std::string top_mark(const PlateSheet& sheet, const Drawn& drawn) {
    const glm::dvec2 top = picture::seen({0.0, 0.5 * sheet.plate.aperture_m.y}, sheet.view);
    const double y = drawn.middle_mm.y - 1e3 * drawn.scale * top.y;
    return text_at({drawn.middle_mm.x + 1.0, top.y < 0.0 ? y + kLetter_mm + 1.0 : y - 1.0},
                   kPictureTop);
}

/// Puts a drawing under what is there.
void add_drawing(Page& page, const PlateSheet& sheet, Drawn drawn) {
    const glm::dvec2 size =
        1e3 * drawn.scale * sheet.plate.aperture_m + 2.0 * (kOverhang_mm + kMargin_mm);
    page.width_mm = std::max(page.width_mm, size.x);
    drawn.middle_mm = {0.5 * size.x, page.height_mm + 0.5 * size.y};
    page.height_mm += size.y;
    page.body += drawing(sheet, drawn) + top_mark(sheet, drawn);
}

Page page_of(const PlateSheet& sheet) {
    Page page;
    page.height_mm = kMargin_mm;
    for (const std::string& words : plate_words(sheet)) {
        page.height_mm += kLine_mm;
        page.body += text_at({kMargin_mm, page.height_mm}, words);
        const double width = letters(words) * kLetterWidth * kLetter_mm + 2.0 * kMargin_mm;
        page.width_mm = std::max(page.width_mm, width);
    }
    page.body += bar(page.height_mm);
    page.height_mm += 10.0;
    page.body += text_at({kMargin_mm, page.height_mm},
                         "Print without fitting to the page: the bar must measure 50 mm.");
    add_drawing(page, sheet, {.scale = 1.0, .id = "plate"});
    if (sheet.tenfold) add_drawing(page, sheet, {.scale = 10.0, .id = "plate_tenfold"});
    return page;
}

}  // namespace

std::string plate_svg(const PlateSheet& sheet) {
    const Page page = page_of(sheet);
    const std::string width = mm(page.width_mm);
    const std::string height = mm(page.height_mm);
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
           "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" +
           width + "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " + height +
           "\">\n<title>" + escaped("Gate plate, " + sheet.projector + ", " + sheet.format) +
           "</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n"
           "<g fill=\"#000\" font-family=\"sans-serif\" font-size=\"" +
           mm(kLetter_mm) + "\">\n<!-- user units are millimetres -->\n" + page.body +
           "</g>\n</svg>\n";
}

}  // namespace rakeline::report
