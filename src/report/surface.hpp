// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"

#include <cairo.h>

#include <memory>
#include <string>

/// Cairo's objects held by value, and its stream into a string.
namespace rakeline::report {

struct DestroyCairo {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
    void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using Surface = std::unique_ptr<cairo_surface_t, DestroyCairo>;
using Context = std::unique_ptr<cairo_t, DestroyCairo>;

/// A cairo_write_func_t whose closure is a std::string.
inline cairo_status_t append_bytes(void* text, const unsigned char* bytes, unsigned count) {
    static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

inline base::Problem cairo_problem(const std::string& what, cairo_status_t status) {
    return {.file = {},
            .line = 0,
            .where = {},
            .what = what + ": " + cairo_status_to_string(status),
            .mend = "free memory or choose a smaller size"};
}

}  // namespace rakeline::report
