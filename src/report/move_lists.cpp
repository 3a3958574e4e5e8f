// SPDX-License-Identifier: MIT
#include "report/change_page.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

using study::ListedMoves;

constexpr double kBetween_pt = 28.0;  ///< the two lists of a page
constexpr double kLargest_pt = 13.0;
constexpr double kSmallest_pt = 6.5;
constexpr double kCaution_pt = 9.5;

std::vector<std::string> cautions_of(const PairedLists& pair) {
    std::vector<std::string> all;
    for (const ListedMoves* list : pair) {
        for (const study::Move& move : list->moves) {
            if (!move.caution.empty() && std::ranges::find(all, move.caution) == all.end())
                all.push_back(move.caution);
        }
    }
    return all;
}

/// One list in a column of the page, at a size of type.
class ListColumn {
public:
    ListColumn(Pages& pages, const ReportInput& in, const ListedMoves& list, double size_pt)
        : pages_(pages), in_(in), list_(list), size_(size_pt) {}

    double height(double width) const {
        double height = head_height();
        for (const study::Move& move : list_.moves)
            height += measured(move, width) + 0.55 * size_;
        return height + (list_.moves.empty() ? 2.0 * size_ : 0.0);
    }

    void draw(double x, double y, double width) const {
        const Lettering& letters = pages_.lettering();
        letters.draw(pages_.to(), x, y,
                     format_name(in_, list_.from) + "  →  " + format_name(in_, list_.to),
                     pages_.strong(1.35 * size_));
        y += head_height();
        pages_.line_across(x, y - 0.45 * size_, width, pages_.theme().quiet, 0.6);
        if (list_.moves.empty()) letters.draw(pages_.to(), x, y, "Nothing changes.", style(width));
        int number = 0;
        for (const study::Move& move : list_.moves) {
            tick_box(x, y);
            TextStyle count = style(0.0);
            count.anchor = drawing::Anchor::right;
            letters.draw(pages_.to(), x + 3.0 * size_, y, std::to_string(++number), count);
            letters.draw(pages_.to(), x + indent(), y, words(move), style(width));
            y += measured(move, width) + 0.55 * size_;
        }
    }

private:
    double head_height() const { return 2.5 * size_; }
    double indent() const { return 3.6 * size_; }

    TextStyle style(double width) const {
        TextStyle style = pages_.body();
        style.size_pt = size_;
        if (width > 0.0) style.wrap_pt = width - indent();
        return style;
    }

    /// A step that a caution at the foot is for carries its sign.
    std::string words(const study::Move& move) const {
        return (move.caution.empty() ? "" : "△ ") + move.text(in_.units());
    }

    double measured(const study::Move& move, double width) const {
        return pages_.lettering().measured(words(move), style(width)).height;
    }

    void tick_box(double x, double y) const {
        const Rgb& ink = pages_.theme().quiet;
        cairo_rectangle(pages_.to(), x + 0.5, y + 0.15 * size_, size_, size_);
        cairo_set_line_width(pages_.to(), 0.9);
        cairo_set_source_rgb(pages_.to(), ink.r, ink.g, ink.b);
        cairo_stroke(pages_.to());
    }

    Pages& pages_;
    const ReportInput& in_;
    const ListedMoves& list_;
    double size_;
};

double cautions_height(const Pages& pages, const std::vector<std::string>& cautions) {
    TextStyle style = pages.quiet(kCaution_pt);
    style.wrap_pt = pages.content().width;
    double height = 12.0;
    for (const std::string& caution : cautions)
        height += pages.lettering().measured("△ " + caution, style).height + 1.5;
    return height + pages.lettering().measured(study::kMovesDefer, style).height;
}

void draw_cautions_at_foot(Pages& pages, const std::vector<std::string>& cautions) {
    pages.move_to(pages.content().bottom() - cautions_height(pages, cautions));
    pages.rule(0.5);
    pages.gap(6.0);
    for (const std::string& caution : cautions) {
        pages.paragraph("△ " + caution, pages.quiet(kCaution_pt));
        pages.gap(1.5);
    }
    pages.paragraph(study::kMovesDefer, pages.quiet(kCaution_pt));
}

double fitting_size(
    Pages& pages, const ReportInput& in, const PairedLists& pair, double width, double height) {
    double size = kLargest_pt;
    const auto fits = [&](const ListedMoves* list) {
        return ListColumn(pages, in, *list, size).height(width) <= height;
    };
    while (size > kSmallest_pt && !std::ranges::all_of(pair, fits))
        size -= 0.25;
    return size;
}

}  // namespace

std::vector<PairedLists> paired_lists(const study::ChangeBook& book, int projector) {
    std::vector<PairedLists> pages;
    for (const ListedMoves& list : book.lists) {
        if (list.projector != projector) continue;
        const bool way_back = !pages.empty() && pages.back().size() == 1 &&
                              pages.back().front()->from == list.to &&
                              pages.back().front()->to == list.from && list.from != list.to;
        if (!way_back) pages.emplace_back();
        pages.back().push_back(&list);
    }
    return pages;
}

void draw_move_lists(Pages& pages, const ReportInput& in, const PairedLists& pair) {
    const Box box = pages.content();
    const std::vector<std::string> cautions = cautions_of(pair);
    // A list alone keeps to a width that reads well.
    const double width = 0.5 * (box.width - kBetween_pt);
    const double height = pages.left_of_page() - cautions_height(pages, cautions);
    const double size = fitting_size(pages, in, pair, width, height);
    double x = box.x;
    for (const ListedMoves* list : pair) {
        ListColumn(pages, in, *list, size).draw(x, pages.y(), width);
        x += width + kBetween_pt;
    }
    draw_cautions_at_foot(pages, cautions);
}

}  // namespace rakeline::report
