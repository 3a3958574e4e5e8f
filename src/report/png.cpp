// SPDX-License-Identifier: MIT
#include "base/assert.hpp"
#include "report/canvas.hpp"
#include "report/report.hpp"
#include "report/surface.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace rakeline::report {
namespace {

/// Cairo's own limit for pictures.
constexpr int kMostPixels = 32767;

std::optional<base::Problem> size_problem(int width, int height) {
    if (width >= 16 && height >= 16 && width <= kMostPixels && height <= kMostPixels)
        return std::nullopt;
    return base::Problem{.file = {},
                         .line = 0,
                         .where = "size",
                         .what = "a picture of " + std::to_string(width) + " x " +
                                 std::to_string(height) + " pixels can't be made",
                         .mend = "use 16 to 32767 pixels each way"};
}

base::Result<std::string> png_of(cairo_surface_t* surface) {
    std::string bytes;
    const cairo_status_t status = cairo_surface_write_to_png_stream(surface, append_bytes, &bytes);
    if (status == CAIRO_STATUS_SUCCESS) return bytes;
    return cairo_problem("the picture could not be written", status);
}

/// A picture of 1000 pixels is looked at like a page of 700 points.
double pixels_per_point(int width, int height) {
    return std::max(1.0, std::sqrt(1.0 * width * height) / 700.0);
}

/// Cairo keeps 32-bit words with colour already multiplied by alpha.
std::uint32_t premultiplied(const unsigned char* rgba) {
    const std::uint32_t alpha = rgba[3];
    const auto times = [alpha](std::uint32_t c) { return (c * alpha + 127) / 255; };
    return alpha << 24 | times(rgba[0]) << 16 | times(rgba[1]) << 8 | times(rgba[2]);
}

std::optional<base::Problem> fill(cairo_surface_t* surface,
                                  int width,
                                  int height,
                                  const std::vector<unsigned char>& rgba) {
    RL_ASSERT(rgba.size() ==
              4u * static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    cairo_surface_flush(surface);
    unsigned char* rows = cairo_image_surface_get_data(surface);
    if (!rows) return cairo_problem("the picture could not be made", CAIRO_STATUS_NO_MEMORY);
    const int stride = cairo_image_surface_get_stride(surface);
    for (int y = 0; y < height; ++y) {
        auto* row = reinterpret_cast<std::uint32_t*>(rows + std::ptrdiff_t{stride} * y);
        for (int x = 0; x < width; ++x)
            row[x] = premultiplied(
                &rgba[4 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                           static_cast<std::size_t>(x))]);
    }
    cairo_surface_mark_dirty(surface);
    return std::nullopt;
}

void paint_scale(cairo_t* to,
                 const Lettering& lettering,
                 double height_pt,
                 const drawing::Drawing& scale) {
    constexpr double kLine_pt = 10.5, kMargin_pt = 10.0, kPad_pt = 5.0;
    const glm::dvec2 size = kLine_pt * (scale.high - scale.low);
    const Box box{kMargin_pt + kPad_pt, height_pt - kMargin_pt - kPad_pt - size.y, size.x, size.y};
    const Theme& theme = dark_theme();
    cairo_rectangle(to, box.x - kPad_pt, box.y - kPad_pt, box.width + 2.0 * kPad_pt,
                    box.height + 2.0 * kPad_pt);
    cairo_set_source_rgba(to, theme.ground.r, theme.ground.g, theme.ground.b, 0.88);
    cairo_fill(to);
    Canvas(to, lettering, theme, base::UnitSystem::metric).paint(scale, {box, kLine_pt});
}

}  // namespace

base::Result<std::string> drawing_png(
    const drawing::Drawing& drawing, int width, int height, base::UnitSystem units, bool paper) {
    if (const auto problem = size_problem(width, height)) return *problem;
    const auto lettering = Lettering::open();
    if (!lettering) return lettering.problems();
    const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height));
    const Context context(cairo_create(surface.get()));
    const Theme& theme = paper ? paper_theme() : dark_theme();
    cairo_set_source_rgb(context.get(), theme.ground.r, theme.ground.g, theme.ground.b);
    cairo_paint(context.get());
    const double pixels_per_pt = pixels_per_point(width, height);
    cairo_scale(context.get(), pixels_per_pt, pixels_per_pt);
    const double margin = 8.0;
    const Box box{margin, margin, width / pixels_per_pt - 2.0 * margin,
                  height / pixels_per_pt - 2.0 * margin};
    const glm::dvec2 extent = drawing.high - drawing.low;
    if (extent.x > 0.0 && extent.y > 0.0 && box.width > 0.0 && box.height > 0.0)
        Canvas(context.get(), *lettering, theme, units).paint(drawing, fitted(drawing, box));
    cairo_surface_flush(surface.get());
    return png_of(surface.get());
}

base::Result<std::string> image_png(int width, int height, const std::vector<unsigned char>& rgba) {
    if (const auto problem = size_problem(width, height)) return *problem;
    const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_ARGB32, width, height));
    if (const auto problem = fill(surface.get(), width, height, rgba)) return *problem;
    return png_of(surface.get());
}

base::Result<std::string> image_png(int width,
                                    int height,
                                    const std::vector<unsigned char>& rgba,
                                    const drawing::Drawing& scale) {
    if (const auto problem = size_problem(width, height)) return *problem;
    const auto lettering = Lettering::open();
    if (!lettering) return lettering.problems();
    const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_ARGB32, width, height));
    if (const auto problem = fill(surface.get(), width, height, rgba)) return *problem;
    const Context context(cairo_create(surface.get()));
    const double pixels_per_pt = pixels_per_point(width, height);
    cairo_scale(context.get(), pixels_per_pt, pixels_per_pt);
    paint_scale(context.get(), *lettering, height / pixels_per_pt, scale);
    cairo_surface_flush(surface.get());
    return png_of(surface.get());
}

}  // namespace rakeline::report
