// SPDX-License-Identifier: MIT
#pragma once

namespace rakeline::desk {

/// A framebuffer with a texture, which the window shows as an image. Needs the window's context
/// for its whole life.
class GlTarget {
public:
    GlTarget();
    ~GlTarget();
    GlTarget(const GlTarget&) = delete;
    GlTarget& operator=(const GlTarget&) = delete;

    /// Makes the texture this large; what it held is lost when the size changes.
    void resize(int width, int height);
    unsigned framebuffer() const { return framebuffer_; }
    unsigned texture() const { return texture_; }
    int width() const { return width_; }
    int height() const { return height_; }

private:
    unsigned framebuffer_ = 0;
    unsigned texture_ = 0;
    int width_ = 0;
    int height_ = 0;
};

}  // namespace rakeline::desk
