// SPDX-License-Identifier: MIT
#include "view/gpu_objects.hpp"

#include <epoxy/gl.h>

namespace rakeline::view {

unsigned make_gpu_name(GpuKind kind) {
    GLuint name = 0;
    switch (kind) {
        case GpuKind::buffer:
            glGenBuffers(1, &name);
            break;
        case GpuKind::vertex_array:
            glGenVertexArrays(1, &name);
            break;
        case GpuKind::texture:
            glGenTextures(1, &name);
            break;
        case GpuKind::renderbuffer:
            glGenRenderbuffers(1, &name);
            break;
        case GpuKind::framebuffer:
            glGenFramebuffers(1, &name);
            break;
    }
    return name;
}

void delete_gpu_name(GpuKind kind, unsigned name) {
    const GLuint gl_name = name;
    switch (kind) {
        case GpuKind::buffer:
            glDeleteBuffers(1, &gl_name);
            break;
        case GpuKind::vertex_array:
            glDeleteVertexArrays(1, &gl_name);
            break;
        case GpuKind::texture:
            glDeleteTextures(1, &gl_name);
            break;
        case GpuKind::renderbuffer:
            glDeleteRenderbuffers(1, &gl_name);
            break;
        case GpuKind::framebuffer:
            glDeleteFramebuffers(1, &gl_name);
            break;
    }
}

}  // namespace rakeline::view
