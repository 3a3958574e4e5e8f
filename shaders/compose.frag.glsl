// SPDX-License-Identifier: MIT
// Puts the view together: the room with its contact shading, the veil of the beams, sRGB.
in vec2 view_uv;
uniform sampler2D room;
uniform sampler2D air;
uniform vec3 beam_colour;
out vec4 colour;

// Within 0.001 of the sRGB curve from 0.003 on, of its straight foot below; three roots cost a
// third of three powers where there is no graphics card.
vec3 encoded(vec3 c) {
    vec3 s1 = sqrt(c);
    vec3 s2 = sqrt(s1);
    vec3 s3 = sqrt(s2);
    vec3 curve = 0.662002687 * s1 + 0.684122060 * s2 - 0.323583601 * s3 - 0.0225411470 * c;
    return mix(12.92 * c, curve, step(vec3(0.0031308), c));
}

void main() {
    vec4 kept = texelFetch(room, ivec2(view_uv * vec2(textureSize(room, 0))), 0);
    // Read where four of its pixels meet: the filter then averages one of each of the four turns of
    // the contact shading's pattern.
    vec2 half_size = vec2(textureSize(air, 0));
    vec2 soft = textureLod(air, round(view_uv * half_size) / half_size, 0.0).rg;
    vec3 c = kept.rgb * kept.rgb * mix(1.0, soft.r, kept.a) + beam_colour * (soft.g * soft.g);
    vec2 at = gl_FragCoord.yx;
    float noise = fract(52.9829189 * fract(dot(at, vec2(0.06711056, 0.00583715))));
    colour = vec4(encoded(clamp(c, 0.0, 1.0)) + (noise - 0.5) / 255.0, 1.0);
}
