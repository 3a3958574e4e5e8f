// SPDX-License-Identifier: MIT
/// Compiled for AVX2 (src/CMakeLists.txt): called only where the processor has it.
#include "sight/hidden_kernel_body.hpp"

namespace rakeline::sight::hidden {

Kernel avx2_kernel() {
    return ::kernel();
}

}  // namespace rakeline::sight::hidden
