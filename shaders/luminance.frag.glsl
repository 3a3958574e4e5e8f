// SPDX-License-Identifier: MIT
// The luminance over the picture as one seat sees it, in the palette, with its contours. It stands
// for a number, so no light of the room falls on it.
in vec2 chart_uv;  // x: place in the palette
uniform vec3 palette[33];    // linear, evenly apart
uniform float first_contour;  // places in the palette
uniform float contour_step;   // 0: no contours
uniform vec3 over_dark;       // linear, of lines over the palette's dark half
uniform vec3 over_bright;
uniform float bright_from;
out vec4 colour;

vec3 palette_colour(float place) {
    float at = clamp(place, 0.0, 1.0) * 32.0;
    int below = min(int(at), 31);
    return mix(palette[below], palette[below + 1], at - float(below));
}

// A line one pixel wide wherever the place passes a contour; where it stands still, an even
// picture at just a contour's value, there is none.
float contour_cover(float place) {
    if (contour_step <= 0.0) return 0.0;
    float steps = (place - first_contour) / contour_step;
    float pixel = fwidth(steps);
    float away = abs(fract(steps + 0.5) - 0.5);
    return clamp(1.2 - away / max(pixel, 1e-6), 0.0, 1.0) * smoothstep(5e-6, 5e-5, pixel);
}

void main() {
    float place = chart_uv.x;
    // In linear light a dark line needs more cover than a bright one to look as strong.
    bool bright = place >= bright_from;
    float cover = (bright ? 0.85 : 0.6) * contour_cover(place);
    colour = stored(mix(palette_colour(place), bright ? over_bright : over_dark, cover), 0.0);
}
