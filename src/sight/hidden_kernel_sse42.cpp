// SPDX-License-Identifier: MIT
/// Compiled for SSE4.2 (src/CMakeLists.txt): called only where the processor has it.
#include "sight/hidden_kernel_body.hpp"

namespace rakeline::sight::hidden {

Kernel sse42_kernel() {
    return ::kernel();
}

}  // namespace rakeline::sight::hidden
