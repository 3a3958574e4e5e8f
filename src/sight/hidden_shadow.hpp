// SPDX-License-Identifier: MIT
#pragma once

/// What a spheroid hides on a line along the picture's generator. Private to sight/hidden.
namespace rakeline::sight::hidden {

/// The cone of lines from the eye that touch a head.
///
/// Frame: the patch's own (x across, y along the generator, z along the normal), origin in the eye.
/// A column of the picture is the line (d.x, y, d.z), y free, where d is its place in plan; it is
/// hidden for
///
///     y = b.d -+ sqrt((left.d) (right.d))        where left.d > 0 and right.d > 0
///
/// left.d > 0 to the right of the left tangent plane along the generator, right.d > 0 to the left
/// of the right one. d need not be of unit length: y comes at the distance |d|, so nothing is
/// divided.
///
/// Derivation. Stretch the room along the spheroid's axis w (upright: w = (0, c, s) in this frame,
/// c and s cosine and sine of the surface's tilt) by kappa = radius / half height: with
/// S = I + (kappa - 1) w w^T the head becomes a sphere of radius r about p = S centre. A line along
/// S (d + y up) meets it where (p.l)^2 >= |l|^2 K, K = p^2 - r^2. With g = S up and e = S d that is
/// a quadratic in y whose discriminant is K (r^2 |g x e|^2 - [g, e, p]^2) (Gram's determinant):
/// free of the cancellation that b^2 - a c would have. |g x e|^2 = g^2 (dx^2 + lambda^2 dz^2) with
/// lambda = kappa / |g|, and in the plan metric of (dx, lambda dz) the bracket factors into the two
/// tangents. Source: derived here.
template <class T>
struct HeadCone {
    T b_x, b_z;
    T left_x, left_z;
    T right_x, right_z;
    T outside;  ///< > 0: the generator through the eye misses the head; else the rest is void
};

template <class T>
struct HeadPlace {
    T x, y, z;  ///< centre from the eye
    T radius, half_height;
};

struct Tilt {
    double cosine = 1.0, sine = 0.0;
};

/// The head made a sphere, and what the two formulas share.
template <class T>
struct Sphere {
    T y, z;            ///< centre, stretched (x stays)
    T up_y, up_z;      ///< g
    T back_y, back_z;  ///< S (0, 0, 1)
    T up_dot_centre;   ///< g . p
    T power;           ///< K; > 0: the eye is outside the head
    T kappa;
};

template <class T>
inline Sphere<T> sphere_of(const HeadPlace<T>& head, T cosine, T sine) {
    Sphere<T> s;
    s.kappa = head.radius / head.half_height;
    const T more = s.kappa - T(1);
    const T along = cosine * head.y + sine * head.z;
    s.y = head.y + more * cosine * along;
    s.z = head.z + more * sine * along;
    s.up_y = T(1) + more * cosine * cosine;
    s.up_z = more * cosine * sine;
    s.back_y = s.up_z;
    s.back_z = T(1) + more * sine * sine;
    s.up_dot_centre = s.up_y * s.y + s.up_z * s.z;
    s.power = head.x * head.x + s.y * s.y + s.z * s.z - head.radius * head.radius;
    return s;
}

/// `root(x)` is the square root of T.
template <class T, class Root>
inline HeadCone<T> head_cone(const HeadPlace<T>& head, T cosine, T sine, Root root) {
    const Sphere<T> s = sphere_of(head, cosine, sine);
    const T r = head.radius;
    const T g2 = s.up_y * s.up_y + s.up_z * s.up_z;
    const T one_over_g = T(1) / root(g2);
    const T x = head.x;
    const T z = (s.up_y * s.z - s.up_z * s.y) * one_over_g;
    const T lambda = s.kappa * one_over_g;
    const T rho2 = x * x + z * z;
    HeadCone<T> cone;
    cone.outside = rho2 - r * r;
    const T a = root(cone.outside);
    const T one_over = one_over_g * one_over_g / cone.outside;
    cone.b_x = s.up_dot_centre * x * one_over;
    cone.b_z = (s.up_dot_centre * (s.back_y * s.y + s.back_z * s.z) -
                (s.up_y * s.back_y + s.up_z * s.back_z) * s.power) *
               one_over;
    // The whole scale of the product goes to the left factor.
    const T scale = s.power * one_over / (cone.outside * rho2);
    cone.left_x = (r * x - a * z) * scale;
    cone.left_z = (r * z + a * x) * lambda * scale;
    cone.right_x = r * x + a * z;
    cone.right_z = (r * z - a * x) * lambda;
    return cone;
}

/// The same before an upright surface (c = 1, s = 0), where all but one division falls away.
/// `kappa2` is (radius / half height)^2 and `per_kappa2` one over it.
template <class T, class Root>
inline HeadCone<T> upright_cone(const HeadPlace<T>& head, T kappa2, T per_kappa2, Root root) {
    const T rho2 = head.x * head.x + head.z * head.z;
    HeadCone<T> cone;
    cone.outside = rho2 - head.radius * head.radius;
    const T power = cone.outside + kappa2 * (head.y * head.y);
    const T per_both = T(1) / (cone.outside * rho2);
    const T rise = head.y * (per_both * rho2);
    cone.b_x = rise * head.x;
    cone.b_z = rise * head.z;
    const T scale = (power * per_kappa2) * (per_both * (per_both * rho2));
    const T a = root(cone.outside);
    const T r = head.radius;
    cone.left_x = (r * head.x - a * head.z) * scale;
    cone.left_z = (r * head.z + a * head.x) * scale;
    cone.right_x = r * head.x + a * head.z;
    cone.right_z = r * head.z - a * head.x;
    return cone;
}

}  // namespace rakeline::sight::hidden
