// SPDX-License-Identifier: MIT
#include "report/pages.hpp"

#include <cairo-pdf.h>

namespace rakeline::report {
namespace {

constexpr double kSideMargin = 48.0;
constexpr double kTopMargin = 56.0;
constexpr double kBottomMargin = 52.0;
constexpr double kHeadLine = 30.0;  ///< running head, from the top edge
constexpr double kFootLine = 36.0;  ///< page number, from the bottom edge

}  // namespace

Sheet sheet_for(base::UnitSystem units) {
    if (units == base::UnitSystem::metric) return {};
    return {612.0, 792.0, "US Letter"};
}

Pages::Pages(cairo_surface_t* pdf, const Setup& setup)
    : pdf_(pdf), context_(cairo_create(pdf)), setup_(setup) {
    begin_page(setup_.landscape);
}

Box Pages::content() const {
    const double width = landscape_ ? setup_.sheet.height : setup_.sheet.width;
    const double height = landscape_ ? setup_.sheet.width : setup_.sheet.height;
    return {kSideMargin, kTopMargin, width - 2.0 * kSideMargin,
            height - kTopMargin - kBottomMargin};
}

void Pages::begin_page(bool landscape) {
    landscape_ = landscape;
    const Sheet& sheet = setup_.sheet;
    cairo_pdf_surface_set_size(pdf_, landscape ? sheet.height : sheet.width,
                               landscape ? sheet.width : sheet.height);
    ++number_;
    reserve_ = 0.0;
    y_ = content().y;
    if (number_ == 1) return;
    TextStyle style = quiet(type::kSmall);
    style.wrap_pt = content().width;
    style.ellipsis = true;
    lettering().draw(to(), content().x, kHeadLine, setup_.running_head, style);
    line_across(content().x, kHeadLine + 11.0, content().width, theme().hairline, 0.5);
}

void Pages::end_page() {
    const double y = content().bottom() + kBottomMargin - kFootLine;
    line_across(content().x, y - 5.0, content().width, theme().hairline, 0.5);
    lettering().draw(to(), content().x, y, setup_.foot, quiet(type::kSmall));
    TextStyle style = quiet(type::kSmall);
    style.anchor = drawing::Anchor::right;
    lettering().draw(to(), content().right(), y,
                     std::to_string(number_) + " / " + std::to_string(setup_.total), style);
    cairo_show_page(to());
}

void Pages::new_page(bool landscape) {
    end_page();
    begin_page(landscape);
}

void Pages::finish() {
    end_page();
    context_.reset();
}

bool Pages::make_room(double points) {
    if (left_of_page() >= points) return false;
    new_page(landscape_);
    return true;
}

void Pages::outline(const std::string& title) {
    const std::string link = "page=" + std::to_string(number_) + " pos=[0 0]";
    cairo_pdf_surface_add_outline(pdf_, CAIRO_PDF_OUTLINE_ROOT, title.c_str(), link.c_str(),
                                  CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

void Pages::chapter(const std::string& title, bool landscape) {
    new_page(landscape);
    outline(title);
    y_ += lettering().draw(to(), content().x, y_, title, strong(type::kChapter)).height + 8.0;
}

void Pages::heading(const std::string& title) {
    // A heading alone at the foot of a page is worse than a short page.
    make_room(64.0);
    y_ += 12.0;
    y_ += lettering().draw(to(), content().x, y_, title, strong(type::kHeading)).height + 4.0;
}

void Pages::paragraph(const std::string& text, TextStyle style, double indent) {
    if (style.wrap_pt == 0.0) style.wrap_pt = content().width - indent;
    make_room(lettering().measured(text, style).height);
    y_ += lettering().draw(to(), content().x + indent, y_, text, style).height;
}

void Pages::rule(double strength_pt) {
    line_across(content().x, y_, content().width, theme().hairline, strength_pt);
}

void Pages::line_across(double x, double y, double width, const Rgb& rgb, double weight_pt) {
    cairo_move_to(to(), x, y);
    cairo_line_to(to(), x + width, y);
    cairo_set_dash(to(), nullptr, 0, 0.0);
    cairo_set_line_width(to(), weight_pt);
    cairo_set_source_rgb(to(), rgb.r, rgb.g, rgb.b);
    cairo_stroke(to());
}

TextStyle Pages::body() const {
    return {.size_pt = type::kBody, .colour = theme().text, .leading = 1.12};
}

TextStyle Pages::quiet(double size_pt) const {
    return {.size_pt = size_pt, .colour = theme().quiet, .leading = 1.12};
}

TextStyle Pages::strong(double size_pt) const {
    return {.size_pt = size_pt, .strength = Strength::semibold, .colour = theme().text};
}

}  // namespace rakeline::report
