// SPDX-License-Identifier: MIT
// How the room is kept until it is composed: eight bits of each colour's square root, which spends
// them as the eye does, with half a step of noise (the same for every picture) against bands in the
// dark. The alpha is how much contact shading applies.
vec4 stored(vec3 linear, float contact) {
    float noise = fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715))));
    return vec4(sqrt(linear) + (noise - 0.5) / 255.0, contact);
}
