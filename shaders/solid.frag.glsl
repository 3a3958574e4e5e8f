#version 330 core
// SPDX-License-Identifier: MIT
// A hall before the show: little warm light from above and from the walls, and what the picture
// gives. Colours are linear. The alpha written is how much contact shading applies.
in vec3 room_position;
in vec3 room_normal;
in vec2 part_uv;
in float local_height;
flat in float part_material;
flat in vec3 part_paint;

uniform vec3 eye;
uniform vec3 picture_centre;
uniform vec3 picture_right;  // half the picture's width
uniform vec3 picture_up;     // half its height
uniform vec3 picture_normal;
uniform vec2 picture_size;        // metres along the surface
uniform float picture_light[9];  // relative, rows from the bottom
uniform vec4 flat_colour;         // w 1: this colour alone (the selected seat's outline)

out vec4 colour;

// The order of drawing::Material.
const int kFloor = 0;
const int kStepEdge = 1;
const int kWall = 2;
const int kCeiling = 3;
const int kBoothWall = 4;
const int kPort = 5;
const int kMasking = 6;
const int kScreenBack = 7;
const int kScreen = 8;
const int kSeat = 9;
const int kLoudspeaker = 10;
const int kProjector = 11;
const int kHead = 13;

// Light from the picture, as from a few lamps spread over it. The wrap stands for its breadth.
vec3 picture_glow(vec3 p, vec3 n) {
    float sum = 0.0;
    for (int i = -1; i <= 1; ++i) {
        vec3 to = picture_centre + 0.62 * float(i) * picture_right - p;
        float d2 = dot(to, to);
        vec3 dir = to * inversesqrt(d2);
        float leaving = max(dot(-dir, picture_normal), 0.0);
        float arriving = max((dot(n, dir) + 0.25) / 1.25, 0.0);
        sum += leaving * arriving / (d2 + 1.0);
    }
    float area = 4.0 * length(picture_right) * length(picture_up);
    return vec3(0.92, 0.88, 0.80) * (0.30 * area * sum / 3.0);
}

// Soft warm light from the ceiling over a dim fill.
vec3 house_light(vec3 n) {
    vec3 fill = mix(vec3(0.085, 0.080, 0.088), vec3(0.25, 0.225, 0.20), 0.5 + 0.5 * n.y);
    float above = max(dot(n, normalize(vec3(0.22, 0.90, 0.38))), 0.0);
    return fill + above * vec3(0.34, 0.285, 0.225);
}

// Scallops of warm light along the side walls, over the heads.
vec3 wall_lamps(vec2 along_and_height) {
    const float kEvery = 3.4;
    vec2 d = vec2(mod(along_and_height.x, kEvery) - 0.5 * kEvery, along_and_height.y - 2.35);
    float away = dot(d * vec2(1.5, 0.85), d * vec2(1.5, 0.85));
    float pool = 1.0 / ((1.0 + away) * (1.0 + away));
    return vec3(1.0, 0.66, 0.36) * (1.5 * pool * smoothstep(2.5, 7.0, along_and_height.x));
}

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
    vec3 field = vec3(0.80, 0.725, 0.59) * (mod(floor(column), 2.0) < 0.5 ? 1.0 : 0.965);
    float columns = line_cover(edge, thin, pixel.x) * 0.42;
    float centre = line_cover(at.y, thin, pixel.y) * 0.55;
    float radius = 0.36 * picture_size.y;
    float away = length(at) - radius;
    float ring = line_cover(away, 1.8 * thin, max(fwidth(away), 1e-5)) * 0.82;
    float ink = max(max(columns, centre), ring);
    return mix(field, vec3(0.085, 0.075, 0.06), ink);
}

vec3 lit(vec3 albedo, vec3 n) {
    return albedo * (house_light(n) + picture_glow(room_position, n));
}

vec3 seat_colour(vec3 n) {
    vec3 cloth = part_paint;
    vec3 frame = vec3(0.030, 0.029, 0.031);
    // Less light reaches down between the rows.
    float depth = mix(0.42, 1.0, smoothstep(0.05, 0.75, local_height));
    return lit(mix(frame, cloth, part_uv.x), n) * depth * 1.22;
}

vec3 wall_colour(vec3 n) {
    vec3 light = house_light(n) + picture_glow(room_position, n) + wall_lamps(part_uv);
    // Toward the ceiling the light fades.
    float high = smoothstep(7.5, 1.5, part_uv.y);
    return vec3(0.050, 0.043, 0.041) * light * mix(0.45, 1.0, high);
}

vec3 loudspeaker_colour(vec3 n) {
    return lit(mix(vec3(0.050, 0.049, 0.052), vec3(0.022, 0.022, 0.024), part_uv.x), n);
}

void main() {
    if (flat_colour.w == 1.0) {
        colour = vec4(flat_colour.rgb, 0.0);
        return;
    }
    vec3 n = normalize(room_normal);
    if (!gl_FrontFacing) n = -n;
    int material = int(part_material + 0.5);
    vec3 c = vec3(0.0);
    float contact = 1.0;
    if (material == kFloor) {
        c = lit(vec3(0.042, 0.041, 0.047), n);
    } else if (material == kStepEdge) {
        c = lit(vec3(0.30, 0.265, 0.215), n);
    } else if (material == kWall) {
        c = wall_colour(n);
    } else if (material == kCeiling) {
        c = lit(vec3(0.035, 0.033, 0.034), n);
    } else if (material == kBoothWall) {
        c = lit(vec3(0.050, 0.045, 0.044), n);
    } else if (material == kPort) {
        c = lit(vec3(0.16, 0.13, 0.095), n);
    } else if (material == kMasking) {
        c = lit(vec3(0.0055, 0.0055, 0.006), n);
    } else if (material == kScreenBack) {
        c = lit(vec3(0.028, 0.028, 0.030), n);
    } else if (material == kScreen) {
        c = framing_chart(part_uv) * relative_light(part_uv);
        contact = 0.0;
    } else if (material == kSeat) {
        c = seat_colour(n);
    } else if (material == kLoudspeaker) {
        c = loudspeaker_colour(n);
    } else if (material == kProjector) {
        c = lit(vec3(0.085, 0.084, 0.088), n);
    } else if (material == kHead) {
        c = lit(vec3(0.020, 0.019, 0.020), n);
    }
    colour = vec4(c, contact);
}
