// SPDX-License-Identifier: MIT
// Seats and heads: small faces, many times over, so lit at their corners.
out vec3 lit_colour;

const int kHead = 13;  // in drawing::Material

vec3 seat_albedo() {
    if (int(material + 0.5) == kHead) return vec3(0.020, 0.019, 0.020);
    return mix(vec3(0.030, 0.029, 0.031), paint.rgb, uv.x);
}

// What seats get beside the light of the hall: their backs face away from all light, but their
// colours must be told; and little light reaches down between the rows.
vec3 seat_light(vec3 at, vec3 n) {
    vec3 behind = vec3(0.30, 0.285, 0.26) * max(dot(n, vec3(0.25, 0.20, 0.947)), 0.0);
    float depth = mix(0.42, 1.0, smoothstep(0.05, 0.75, position.y));
    return (house_light(n) + picture_glow(at, n) + behind) * depth * 1.4;
}

void main() {
    vec3 at = placed_position();
    vec3 n = placed_normal();
    bool head = int(material + 0.5) == kHead;
    vec3 light = head ? house_light(n) + picture_glow(at, n) : seat_light(at, n);
    lit_colour = seat_albedo() * light;
    gl_Position = clip_position(at);
}
