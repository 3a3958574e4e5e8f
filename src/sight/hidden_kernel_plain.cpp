// SPDX-License-Identifier: MIT
/// On any processor.
#include "sight/hidden_kernel_body.hpp"

namespace rakeline::sight::hidden {

Kernel plain_kernel() {
    return ::kernel();
}

}  // namespace rakeline::sight::hidden
