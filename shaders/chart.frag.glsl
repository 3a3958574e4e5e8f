// SPDX-License-Identifier: MIT
// The projected picture. It gives light, so no shading applies to it.
in vec2 chart_uv;
uniform vec2 picture_size;       // metres along the surface
uniform float picture_light[9];  // relative, rows from the bottom
out vec4 colour;

// How much of a line of half width `half_width` at `away` covers a pixel of size `pixel`; lines
// thinner than a pixel grow faint instead of broken.
float line_cover(float away, float half_width, float pixel) {
    float seen = max(half_width, 0.6 * pixel);
    float cover = clamp((seen - abs(away)) / pixel + 0.5, 0.0, 1.0);
    return cover * min(1.0, half_width / (0.6 * pixel) + 0.35);
}

// Quadratic through the nine points, which stand at -0.9, 0 and 0.9 of half the picture.
float relative_light(vec2 uv) {
    vec2 t = (2.0 * uv - 1.0) / 0.9;
    vec3 x = vec3(0.5 * t.x * (t.x - 1.0), 1.0 - t.x * t.x, 0.5 * t.x * (t.x + 1.0));
    vec3 y = vec3(0.5 * t.y * (t.y - 1.0), 1.0 - t.y * t.y, 0.5 * t.y * (t.y + 1.0));
    float sum = 0.0;
    for (int j = 0; j < 3; ++j) {
        for (int i = 0; i < 3; ++i) sum += x[i] * y[j] * picture_light[3 * j + i];
    }
    return clamp(sum, 0.0, 1.0);
}

// The framing chart: a warm grey field in twelve columns, one centre line, one circle.
vec3 framing_chart(vec2 uv) {
    vec2 at = (uv - 0.5) * picture_size;
    vec2 pixel = max(fwidth(at), vec2(1e-5));
    float thin = 0.0022 * picture_size.y;
    float column = uv.x * 12.0;
    float edge = (fract(column + 0.5) - 0.5) * picture_size.x / 12.0;
    vec3 field = vec3(0.735, 0.665, 0.54) * (mod(floor(column), 2.0) < 0.5 ? 1.0 : 0.965);
    float columns = line_cover(edge, thin, pixel.x) * 0.42;
    float centre = line_cover(at.y, thin, pixel.y) * 0.55;
    float radius = 0.36 * picture_size.y;
    float away = length(at) - radius;
    float ring = line_cover(away, 1.8 * thin, max(fwidth(away), 1e-5)) * 0.82;
    float ink = max(max(columns, centre), ring);
    return mix(field, vec3(0.085, 0.075, 0.06), ink);
}

void main() {
    colour = stored(framing_chart(chart_uv) * relative_light(chart_uv), 0.0);
}
