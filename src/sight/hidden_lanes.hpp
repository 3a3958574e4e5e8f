// SPDX-License-Identifier: MIT
#pragma once

#if defined(__SSE4_2__)
#include <immintrin.h>
#endif

/// Eight floats side by side, by the instruction set that the including file is compiled for: one
/// AVX register, two SSE registers, or plain numbers. Each operation rounds once in every lane, so
/// all three give the same bits.
///
/// All is in an unnamed namespace: the files that include this are compiled for different
/// processors, and the linker must never take one file's copy for another's.
namespace {

#if defined(__AVX__)

struct Lanes {
    __m256 v;
    Lanes() = default;
    Lanes(__m256 raw) : v(raw) {}
    explicit Lanes(float x) : v(_mm256_set1_ps(x)) {}
};

inline Lanes load(const float* p) {
    return _mm256_loadu_ps(p);
}
inline void store(float* p, Lanes a) {
    _mm256_storeu_ps(p, a.v);
}
inline Lanes operator+(Lanes a, Lanes b) {
    return _mm256_add_ps(a.v, b.v);
}
inline Lanes operator-(Lanes a, Lanes b) {
    return _mm256_sub_ps(a.v, b.v);
}
inline Lanes operator*(Lanes a, Lanes b) {
    return _mm256_mul_ps(a.v, b.v);
}
inline Lanes operator/(Lanes a, Lanes b) {
    return _mm256_div_ps(a.v, b.v);
}
inline Lanes least(Lanes a, Lanes b) {
    return _mm256_min_ps(a.v, b.v);
}
inline Lanes most(Lanes a, Lanes b) {
    return _mm256_max_ps(a.v, b.v);
}
inline Lanes root(Lanes a) {
    return _mm256_sqrt_ps(a.v);
}
/// Comparisons: all bits of a lane set, or none.
inline Lanes operator<(Lanes a, Lanes b) {
    return _mm256_cmp_ps(a.v, b.v, _CMP_LT_OQ);
}
inline Lanes operator<=(Lanes a, Lanes b) {
    return _mm256_cmp_ps(a.v, b.v, _CMP_LE_OQ);
}
inline Lanes same(Lanes a, Lanes b) {
    return _mm256_cmp_ps(a.v, b.v, _CMP_EQ_OQ);
}
inline Lanes both(Lanes a, Lanes b) {
    return _mm256_and_ps(a.v, b.v);
}
/// b where not a.
inline Lanes without(Lanes a, Lanes b) {
    return _mm256_andnot_ps(a.v, b.v);
}
inline Lanes either(Lanes a, Lanes b) {
    return _mm256_or_ps(a.v, b.v);
}
inline Lanes select(Lanes mask, Lanes yes, Lanes no) {
    return _mm256_blendv_ps(no.v, yes.v, mask.v);
}
inline unsigned bits(Lanes mask) {
    return static_cast<unsigned>(_mm256_movemask_ps(mask.v));
}
inline float least_of_eight(Lanes a) {
    const __m128 four = _mm_min_ps(_mm256_castps256_ps128(a.v), _mm256_extractf128_ps(a.v, 1));
    const __m128 two = _mm_min_ps(four, _mm_movehl_ps(four, four));
    return _mm_cvtss_f32(_mm_min_ss(two, _mm_movehdup_ps(two)));
}

#elif defined(__SSE4_2__)

struct Lanes {
    __m128 a, b;
    Lanes() = default;
    Lanes(__m128 low, __m128 high) : a(low), b(high) {}
    explicit Lanes(float x) : a(_mm_set1_ps(x)), b(a) {}
};

inline Lanes load(const float* p) {
    return {_mm_loadu_ps(p), _mm_loadu_ps(p + 4)};
}
inline void store(float* p, Lanes x) {
    _mm_storeu_ps(p, x.a);
    _mm_storeu_ps(p + 4, x.b);
}
inline Lanes operator+(Lanes x, Lanes y) {
    return {_mm_add_ps(x.a, y.a), _mm_add_ps(x.b, y.b)};
}
inline Lanes operator-(Lanes x, Lanes y) {
    return {_mm_sub_ps(x.a, y.a), _mm_sub_ps(x.b, y.b)};
}
inline Lanes operator*(Lanes x, Lanes y) {
    return {_mm_mul_ps(x.a, y.a), _mm_mul_ps(x.b, y.b)};
}
inline Lanes operator/(Lanes x, Lanes y) {
    return {_mm_div_ps(x.a, y.a), _mm_div_ps(x.b, y.b)};
}
inline Lanes least(Lanes x, Lanes y) {
    return {_mm_min_ps(x.a, y.a), _mm_min_ps(x.b, y.b)};
}
inline Lanes most(Lanes x, Lanes y) {
    return {_mm_max_ps(x.a, y.a), _mm_max_ps(x.b, y.b)};
}
inline Lanes root(Lanes x) {
    return {_mm_sqrt_ps(x.a), _mm_sqrt_ps(x.b)};
}
inline Lanes operator<(Lanes x, Lanes y) {
    return {_mm_cmplt_ps(x.a, y.a), _mm_cmplt_ps(x.b, y.b)};
}
inline Lanes operator<=(Lanes x, Lanes y) {
    return {_mm_cmple_ps(x.a, y.a), _mm_cmple_ps(x.b, y.b)};
}
inline Lanes same(Lanes x, Lanes y) {
    return {_mm_cmpeq_ps(x.a, y.a), _mm_cmpeq_ps(x.b, y.b)};
}
inline Lanes both(Lanes x, Lanes y) {
    return {_mm_and_ps(x.a, y.a), _mm_and_ps(x.b, y.b)};
}
inline Lanes without(Lanes x, Lanes y) {
    return {_mm_andnot_ps(x.a, y.a), _mm_andnot_ps(x.b, y.b)};
}
inline Lanes either(Lanes x, Lanes y) {
    return {_mm_or_ps(x.a, y.a), _mm_or_ps(x.b, y.b)};
}
inline Lanes select(Lanes mask, Lanes yes, Lanes no) {
    return {_mm_blendv_ps(no.a, yes.a, mask.a), _mm_blendv_ps(no.b, yes.b, mask.b)};
}
inline unsigned bits(Lanes mask) {
    return static_cast<unsigned>(_mm_movemask_ps(mask.a) | (_mm_movemask_ps(mask.b) << 4));
}
inline float least_of_eight(Lanes x) {
    const __m128 four = _mm_min_ps(x.a, x.b);
    const __m128 two = _mm_min_ps(four, _mm_movehl_ps(four, four));
    return _mm_cvtss_f32(_mm_min_ss(two, _mm_movehdup_ps(two)));
}

#else

/// A mask is 1 or 0 in each lane; as a value it is only ever passed to both, without, either,
/// select and bits, or to `both` with a value that is to be kept or made 0.
struct Lanes {
    float v[8];
    Lanes() = default;
    explicit Lanes(float x) : v{x, x, x, x, x, x, x, x} {}
};

template <class F>
inline Lanes lane_by_lane(Lanes a, Lanes b, F f) {
    Lanes out;
    for (int i = 0; i < 8; ++i)
        out.v[i] = f(a.v[i], b.v[i]);
    return out;
}
inline Lanes load(const float* p) {
    Lanes out;
    for (int i = 0; i < 8; ++i)
        out.v[i] = p[i];
    return out;
}
inline void store(float* p, Lanes a) {
    for (int i = 0; i < 8; ++i)
        p[i] = a.v[i];
}
inline Lanes operator+(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float x, float y) { return x + y; });
}
inline Lanes operator-(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float x, float y) { return x - y; });
}
inline Lanes operator*(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float x, float y) { return x * y; });
}
inline Lanes operator/(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float x, float y) { return x / y; });
}
inline Lanes least(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float x, float y) { return x < y ? x : y; });
}
inline Lanes most(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float x, float y) { return x > y ? x : y; });
}
inline Lanes root(Lanes a) {
    return lane_by_lane(a, a, [](float x, float) { return __builtin_sqrtf(x); });
}
inline Lanes operator<(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float x, float y) { return x < y ? 1.0F : 0.0F; });
}
inline Lanes operator<=(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float x, float y) { return x <= y ? 1.0F : 0.0F; });
}
inline Lanes same(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float x, float y) { return x == y ? 1.0F : 0.0F; });
}
inline Lanes both(Lanes mask, Lanes b) {
    return lane_by_lane(mask, b, [](float m, float x) { return m != 0.0F ? x : 0.0F; });
}
inline Lanes without(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float m, float x) { return m != 0.0F ? 0.0F : x; });
}
inline Lanes either(Lanes a, Lanes b) {
    return lane_by_lane(a, b, [](float m, float x) { return m != 0.0F ? m : x; });
}
inline Lanes select(Lanes mask, Lanes yes, Lanes no) {
    Lanes out;
    for (int i = 0; i < 8; ++i)
        out.v[i] = mask.v[i] != 0.0F ? yes.v[i] : no.v[i];
    return out;
}
inline unsigned bits(Lanes mask) {
    unsigned out = 0;
    for (unsigned i = 0; i < 8; ++i)
        out |= (mask.v[i] != 0.0F ? 1U : 0U) << i;
    return out;
}
inline float least_of_eight(Lanes a) {
    float out = a.v[0];
    for (const float x : a.v)
        out = x < out ? x : out;
    return out;
}

#endif

}  // namespace
