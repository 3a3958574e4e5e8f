// SPDX-License-Identifier: MIT
in vec2 at;
in float pixel;
flat in float mark_kind;
uniform vec3 missed_colour;  // linear
uniform vec3 lamp_colour;
out vec4 colour;

// Distance to a bar from the origin's both sides along `dir`.
float bar(vec2 p, vec2 dir) {
    float along = clamp(dot(p, dir), -0.82, 0.82);
    return length(p - along * dir);
}

float pointer(vec2 p) {
    // A triangle that points down.
    vec2 q = vec2(abs(p.x), p.y);
    return max(dot(q, normalize(vec2(1.6, -1.0))) - 0.42, q.y - 0.62);
}

void main() {
    float away = mark_kind < 0.5 ? min(bar(at, vec2(0.7071)), bar(at, vec2(0.7071, -0.7071))) - 0.19
                                 : pointer(at);
    vec3 ink = mark_kind < 0.5 ? missed_colour : lamp_colour;
    float inner = clamp(0.5 - away / pixel, 0.0, 1.0);
    // A dark rim keeps the sign readable on every seat colour.
    float rim = clamp(0.5 - (away - 1.3 * pixel) / pixel, 0.0, 1.0);
    float cover = max(inner, 0.75 * rim);
    if (cover <= 0.0) discard;
    colour = stored(mix(vec3(0.006), ink, inner), cover);
}
