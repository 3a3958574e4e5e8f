// SPDX-License-Identifier: MIT
#include "base/assert.hpp"

#include <cstdio>
#include <cstdlib>

namespace rakeline::base {

void fail_assert(const char* expression, const char* file, int line) {
    std::fprintf(stderr, "rakeline: internal fault: %s at %s:%d\n", expression, file, line);
    std::abort();
}

}  // namespace rakeline::base
