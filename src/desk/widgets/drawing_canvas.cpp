// SPDX-License-Identifier: MIT
#include "desk/widgets/drawing_canvas.hpp"

#include "base/number_text.hpp"
#include "desk/triangulate.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::desk {
namespace {

using drawing::Anchor;
using drawing::Ink;
using drawing::Shows;
using drawing::Weight;

struct Box {
    ImVec2 low, high;
    bool meets(const Box& other) const {
        return low.x < other.high.x && other.low.x < high.x && low.y < other.high.y &&
               other.low.y < high.y;
    }
};

/// Text that waits until the lines are painted, so that it can be sorted and kept apart.
struct WaitingText {
    std::string text;
    ImVec2 at;  ///< the anchor
    Anchor anchor = Anchor::centre;
    ImVec4 colour;
    int rank = 0;  ///< lower goes first
    bool vertical = false;
    bool on_ground = false;  ///< what lies under it gives way: a dimension's line
};

float label_height(const Theme& t) {
    return t.font.small->FontSize * ImGui::GetIO().FontGlobalScale;
}

/// Kept free about a label.
float label_pad(const Theme& t) {
    return t.px(2);
}

bool same(const Shows& a, const Shows& b) {
    return a.kind != Shows::Kind::nothing && a == b;
}

float line_width(const Theme& theme, Weight weight) {
    switch (weight) {
        case Weight::cut:
            return 1.8f * theme.scale;
        case Weight::seen:
            return 1.0f * theme.scale;
        case Weight::helper:
            break;
    }
    return std::max(0.5f * theme.scale, 0.75f);
}

class Painter {
public:
    Painter(const Theme& t, ImDrawList& list, const DrawingView& view, const PaintChoice& choice)
        : theme_(t), list_(list), view_(view), choice_(choice) {}

    void operator()(const drawing::Line& line) {
        std::vector<ImVec2> points;
        for (const glm::dvec2& point : line.points)
            points.push_back(view_.to_pixel(point));
        if (points.size() < 2) return;
        const bool picked = same(line.shows, choice_.hovered) || same(line.shows, choice_.selected);
        const ImVec4 colour = picked ? theme_.colour.lamp : ink_colour(theme_.colour, line.ink);
        const float strength = picked ? 1.0f : line_strength(line);
        const float width = line_width(theme_, line.weight) * (picked ? 1.6f : 1.0f);
        if (line.dashed)
            dashes(points, line.closed, packed(colour, strength), width);
        else
            list_.AddPolyline(points.data(), static_cast<int>(points.size()),
                              packed(colour, strength),
                              line.closed ? ImDrawFlags_Closed : ImDrawFlags_None, width);
    }

    void operator()(const drawing::Fill& fill) {
        const bool picked = same(fill.shows, choice_.hovered) || same(fill.shows, choice_.selected);
        const ImVec4 ink = picked ? theme_.colour.lamp : ink_colour(theme_.colour, fill.ink);
        const auto strength =
            static_cast<float>(picked ? std::min(fill.strength + 0.12, 1.0) : fill.strength);
        const ImU32 colour = packed(ink, strength);
        // Without smoothed edges: neighbouring triangles would show their seams.
        const ImDrawListFlags flags = list_.Flags;
        list_.Flags &= ~ImDrawListFlags_AntiAliasedFill;
        for (const auto& [a, b, c] : triangulate(fill.points))
            list_.AddTriangleFilled(view_.to_pixel(fill.points[a]), view_.to_pixel(fill.points[b]),
                                    view_.to_pixel(fill.points[c]), colour);
        list_.Flags = flags;
    }

    void operator()(const drawing::Shading& shading) {
        if (shading.triangles.empty()) return;
        const int corners = static_cast<int>(shading.points.size());
        const int indices = 3 * static_cast<int>(shading.triangles.size());
        list_.PrimReserve(indices, corners);
        const unsigned first = list_._VtxCurrentIdx;
        const ImVec2 white = ImGui::GetFontTexUvWhitePixel();
        for (std::size_t i = 0; i < shading.points.size(); ++i)
            list_.PrimWriteVtx(view_.to_pixel(shading.points[i]), white,
                               packed(of_rgb(drawing::cividis(shading.places[i]))));
        for (const auto& triangle : shading.triangles)
            for (const int corner : triangle)
                list_.PrimWriteIdx(static_cast<ImDrawIdx>(first + static_cast<unsigned>(corner)));
    }

    void operator()(const drawing::Label& label) {
        const bool picked =
            same(label.shows, choice_.hovered) || same(label.shows, choice_.selected);
        const ImVec4 colour = picked ? theme_.colour.lamp : ink_colour(theme_.colour, label.ink);
        int rank = label.ink == Ink::missed ? 1 : label.ink == Ink::near ? 2 : 3;
        if (picked) rank = 0;
        texts_.push_back({label.text, view_.to_pixel(label.at), label.anchor, colour, rank,
                          label.vertical && !view_.turned, label.on_ground});
    }

    void operator()(const drawing::Dimension& dimension) {
        const drawing::Segment run = drawing::dimension_line(dimension);
        const ImVec2 a = view_.to_pixel(run.from), b = view_.to_pixel(run.to);
        const ImU32 ink = packed(theme_.colour.quiet, 0.7f);
        const float width = line_width(theme_, Weight::helper);
        list_.AddLine(a, b, ink, width);
        list_.AddLine(view_.to_pixel(dimension.from), a, packed(theme_.colour.quiet, 0.3f), width);
        list_.AddLine(view_.to_pixel(dimension.to), b, packed(theme_.colour.quiet, 0.3f), width);
        tick_mark(a, ink);
        tick_mark(b, ink);
        const bool upright = std::abs(b.y - a.y) > std::abs(b.x - a.x);
        const float length = std::hypot(b.x - a.x, b.y - a.y);
        const std::string text = drawing::dimension_text(dimension, choice_.units);
        if (length < text_width(theme_.font.small, text) + theme_.px(6)) return;
        texts_.push_back({text,
                          {(a.x + b.x) / 2.0f, (a.y + b.y) / 2.0f},
                          Anchor::centre,
                          theme_.colour.quiet,
                          4,
                          upright,
                          true});
    }

    /// Returns how many were left out.
    int paint_texts() {
        std::stable_sort(texts_.begin(), texts_.end(),
                         [](const auto& a, const auto& b) { return a.rank < b.rank; });
        return static_cast<int>(std::count_if(
            texts_.begin(), texts_.end(), [this](const auto& text) { return !paint_one(text); }));
    }

private:
    static float line_strength(const drawing::Line& line) {
        if (line.ink == Ink::quiet) return line.weight == Weight::helper ? 0.22f : 0.45f;
        if (line.ink == Ink::sight || line.ink == Ink::holds)
            return line.weight == Weight::helper ? 0.35f : 0.7f;
        if (line.ink == Ink::beam) return 0.55f;
        return 1.0f;
    }

    void tick_mark(ImVec2 at, ImU32 ink) {
        const float r = theme_.px(3);
        list_.AddLine({at.x - r, at.y + r}, {at.x + r, at.y - r}, ink, 1.0f);
    }

    void dashes(const std::vector<ImVec2>& points, bool closed, ImU32 ink, float width) {
        const float on = theme_.px(6), off = theme_.px(4);
        const std::size_t runs = closed ? points.size() : points.size() - 1;
        float into = 0.0f;  // along the pattern, carried from run to run
        for (std::size_t i = 0; i < runs; ++i) {
            const ImVec2 a = points[i], b = points[(i + 1) % points.size()];
            const float length = std::hypot(b.x - a.x, b.y - a.y);
            if (length > 20000.0f) return;  // zoomed far in: nothing of it would be read
            for (float at = 0.0f; at < length;) {
                const bool drawn = into < on;
                const float step = std::min((drawn ? on : on + off) - into, length - at);
                const auto along = [&](float d) {
                    return ImVec2{a.x + (b.x - a.x) * d / length, a.y + (b.y - a.y) * d / length};
                };
                if (drawn) list_.AddLine(along(at), along(at + step), ink, width);
                at += std::max(step, 0.01f);
                into += std::max(step, 0.01f);
                if (into >= on + off) into = 0.0f;
            }
        }
    }

    bool paint_one(const WaitingText& text) {
        const float width = text_width(theme_.font.small, text.text);
        const float height = label_height(theme_);
        const ImVec2 size = text.vertical ? ImVec2{height, width} : ImVec2{width, height};
        ImVec2 low{text.at.x - size.x / 2.0f, text.at.y - size.y / 2.0f};
        if (!text.vertical && text.anchor == Anchor::left) low.x = text.at.x;
        if (!text.vertical && text.anchor == Anchor::right) low.x = text.at.x - size.x;
        const float pad = label_pad(theme_);
        const Box box{{low.x - pad, low.y - pad}, {low.x + size.x + pad, low.y + size.y + pad}};
        for (const Box& other : taken_)
            if (box.meets(other)) return false;
        taken_.push_back(box);
        const bool loud = text.rank <= 1;
        if (loud || text.on_ground)
            list_.AddRectFilled(box.low, box.high,
                                packed(loud ? theme_.colour.raised : theme_.colour.ground, 0.92f),
                                theme_.px(4));
        if (text.vertical)
            paint_upright(text, low, width);
        else
            paint_text(list_, theme_.font.small, low, text.colour, text.text);
        return true;
    }

    /// Turns the letters by a quarter, reading upward. They are painted in the middle of the field
    /// first, since letters outside of it would be left out.
    void paint_upright(const WaitingText& text, ImVec2 low, float width) {
        const ImVec2 a = list_.GetClipRectMin(), b = list_.GetClipRectMax();
        const ImVec2 middle{std::round((a.x + b.x - width) / 2.0f), std::round((a.y + b.y) / 2.0f)};
        const int first = list_.VtxBuffer.Size;
        paint_text(list_, theme_.font.small, middle, text.colour, text.text);
        for (int i = first; i < list_.VtxBuffer.Size; ++i) {
            ImVec2& p = list_.VtxBuffer[i].pos;
            p = {std::round(low.x) + p.y - middle.y, std::round(low.y) + width - (p.x - middle.x)};
        }
    }

    const Theme& theme_;
    ImDrawList& list_;
    const DrawingView& view_;
    const PaintChoice& choice_;
    std::vector<WaitingText> texts_;
    std::vector<Box> taken_;
};

}  // namespace

ImVec2 DrawingView::to_pixel(glm::dvec2 at) const {
    const glm::dvec2 run =
        turned ? glm::dvec2{at.y, -at.x} : glm::dvec2{at.x, y_down ? at.y : -at.y};
    const glm::dvec2 pixel = origin + run * scale;
    return {static_cast<float>(pixel.x), static_cast<float>(pixel.y)};
}

glm::dvec2 DrawingView::to_drawing(ImVec2 pixel) const {
    const glm::dvec2 at{static_cast<double>(pixel.x), static_cast<double>(pixel.y)};
    const glm::dvec2 run = (at - origin) / scale;
    return turned ? glm::dvec2{-run.y, run.x} : glm::dvec2{run.x, y_down ? run.y : -run.y};
}

DrawingView fitted_view(const drawing::Drawing& drawing,
                        ImVec2 low,
                        ImVec2 high,
                        const DrawingLook& look) {
    const glm::dvec2 size = glm::max(drawing.high - drawing.low, glm::dvec2(1e-3));
    const glm::dvec2 corner{static_cast<double>(low.x), static_cast<double>(low.y)};
    const glm::dvec2 field =
        glm::dvec2{static_cast<double>(high.x), static_cast<double>(high.y)} - corner;
    const double upright = std::min(field.x / size.x, field.y / size.y);
    const double lying = std::min(field.x / size.y, field.y / size.x);
    DrawingView view;
    view.y_down = drawing.y_down;
    view.turned = drawing.y_down && lying > upright;
    view.scale = std::max(view.turned ? lying : upright, 1e-3) * look.zoom;
    const ImVec2 middle = view.to_pixel((drawing.low + drawing.high) / 2.0);
    view.origin = corner + field / 2.0 + look.offset -
                  glm::dvec2{static_cast<double>(middle.x), static_cast<double>(middle.y)};
    return view;
}

int paint_drawing(const Theme& theme,
                  ImDrawList& list,
                  const drawing::Drawing& drawing,
                  const DrawingView& view,
                  const PaintChoice& choice) {
    Painter painter(theme, list, view, choice);
    for (const drawing::Item& item : drawing.items)
        std::visit(painter, item);
    return painter.paint_texts();
}

float label_pitch(const Theme& t) {
    return label_height(t) + 2.0f * label_pad(t) + 1.0f;
}

std::string scale_text(const Theme& theme, const DrawingView& view) {
    constexpr double kPixelsPerMetre = 96.0 / 0.0254;
    const double ratio = kPixelsPerMetre * static_cast<double>(theme.scale) / view.scale;
    if (ratio < 1.0) return base::significant_text(1.0 / ratio, 2) + " : 1";
    const double step = std::pow(10.0, std::floor(std::log10(ratio)) - 1.0);
    return "1 : " + base::fixed_text(std::round(ratio / step) * step, 0);
}

}  // namespace rakeline::desk
