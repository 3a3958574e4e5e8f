// SPDX-License-Identifier: MIT
#pragma once

#include "report/canvas.hpp"
#include "report/surface.hpp"

#include <string>

/// Pages of a document: margins, running head, page numbers, and a pen that moves down the page.
namespace rakeline::report {

/// Sheet in portrait, points.
struct Sheet {
    double width = 595.276;
    double height = 841.890;
    const char* name = "A4";
};
Sheet sheet_for(base::UnitSystem units);  ///< A4, or US Letter where units are imperial

/// Sizes of lettering, points.
namespace type {
inline constexpr double kTitle = 22.0;
inline constexpr double kChapter = 15.0;
inline constexpr double kHeading = 9.5;
inline constexpr double kBody = 8.2;
inline constexpr double kTable = 7.3;
inline constexpr double kSmall = 6.6;
}  // namespace type

class Pages {
public:
    struct Setup {
        const Lettering& lettering;
        const Theme& theme;
        Sheet sheet;
        std::string running_head;  ///< at the top left of every page but the first
        std::string foot;          ///< at the bottom left of every page
        int total = 0;             ///< number of pages, from a first pass; 0 while counting
        bool landscape = false;    ///< of the first page
    };
    Pages(cairo_surface_t* pdf, const Setup& setup);

    /// Ends the page and begins the next; the first page has begun already.
    void new_page(bool landscape = false);
    void finish();
    int count() const { return number_; }

    /// Space between the margins of this page.
    Box content() const;
    double left_of_page() const { return content().bottom() - reserve_ - y_; }
    /// Keeps the lowest points of this page free.
    void reserve(double points) { reserve_ = points; }
    /// Goes to a new page unless `points` more fit on this one; whether it did.
    bool make_room(double points);

    double y() const { return y_; }
    void move_to(double y) { y_ = y; }
    void gap(double points) { y_ += points; }

    /// Title of a chapter on a new page, with an entry in the outline; of a part of it, in place.
    void chapter(const std::string& title, bool landscape = false);
    void heading(const std::string& title);
    /// Wrapped text over the width of the page (or `width`), kept on one page.
    void paragraph(const std::string& text, TextStyle style, double indent = 0.0);
    void rule(double strength_pt = 0.5);
    void line_across(double x, double y, double width, const Rgb& rgb, double weight_pt);

    TextStyle body() const;
    TextStyle quiet(double size_pt = type::kBody) const;
    TextStyle strong(double size_pt = type::kBody) const;

    cairo_t* to() const { return context_.get(); }
    const Lettering& lettering() const { return setup_.lettering; }
    const Theme& theme() const { return setup_.theme; }

private:
    void begin_page(bool landscape);
    void end_page();
    void outline(const std::string& title);

    cairo_surface_t* pdf_;
    Context context_;
    Setup setup_;
    int number_ = 0;
    bool landscape_ = false;
    double y_ = 0.0;
    double reserve_ = 0.0;
};

}  // namespace rakeline::report
