// A stretch of a ray as a screen-facing strip, two or three pixels wide. Its ends fade over one pixel, so that two
// stretches that meet add up to one unbroken ray.
layout(location = 0) in vec3 a_from;
layout(location = 1) in vec3 a_to;
layout(location = 2) in vec3 a_colour;
layout(location = 3) in vec2 a_shares;  // of its strength, at either end
#ifdef LIGHT_IS_PAINTED
layout(location = 4) in vec3 a_zone_colour;
#define RAY_COLOUR a_zone_colour
#else
#define RAY_COLOUR a_colour
#endif
#ifdef LIGHT_MOVES
layout(location = 5) in vec2 a_path;  // optical path at either end, mm
out vec2 v_path;                      // over depth, with 1 / depth: even in the world, not on the screen
#endif
flat out vec3 v_light;
flat out float v_length;
out float v_share;
out vec2 v_at;  // pixels along the ray, and across in half widths

uniform float u_ray_level;

// On light ground light is ink: densities add up, so overlapping rays darken in their own hue.
vec3 ink_density(vec3 light) {
    float strength = max(light.r, max(light.g, light.b));
    return -1.0 * strength * log(max(ink(light / max(strength, 1e-6)), 0.02));
}

void main() {
    vec3 from = a_from;
    vec3 to = a_to;
    float near = picture.z * 1.01;
    float from_depth = dot(eye.xyz - from, back.xyz);
    float to_depth = dot(eye.xyz - to, back.xyz);
    gl_Position = vec4(0.0, 0.0, 2.0, 1.0);
    v_light = vec3(0.0);
    v_length = 0.0;
    v_at = vec2(0.0);
    v_share = 0.0;
    vec2 shares = a_shares;
#ifdef LIGHT_MOVES
    v_path = vec2(0.0, 1.0);
    vec2 path = a_path;
#endif
    if (from_depth < near && to_depth < near) return;
    if (from_depth < near) {
        float hidden = (near - from_depth) / (to_depth - from_depth);
        from = mix(from, to, hidden);
        shares.x = mix(shares.x, shares.y, hidden);
#ifdef LIGHT_MOVES
        path.x = mix(path.x, path.y, hidden);
#endif
    }
    if (to_depth < near) {
        float hidden = (near - to_depth) / (from_depth - to_depth);
        to = mix(to, from, hidden);
        shares.y = mix(shares.y, shares.x, hidden);
#ifdef LIGHT_MOVES
        path.y = mix(path.y, path.x, hidden);
#endif
    }

    vec4 from_clip = clip_from_world * vec4(from, 1.0);
    vec4 to_clip = clip_from_world * vec4(to, 1.0);
    vec2 half_picture = 0.5 * picture.xy;
    vec2 along = (to_clip.xy / to_clip.w - from_clip.xy / from_clip.w) * half_picture;
    float length_px = length(along);
    along = length_px > 1e-3 ? along / length_px : vec2(1.0, 0.0);

    // Close up the rays lie far apart: they grow wider and softer instead of ever brighter.
    float pixels_per_mm = up.w / max(0.5 * (from_clip.w + to_clip.w), near);
    float half_width = mix(1.8, 3.0, smoothstep(2.0, 9.0, pixels_per_mm / PIXEL_SCALE)) * PIXEL_SCALE;
    bool at_end = (gl_VertexID & 1) == 1;
    float side = (gl_VertexID & 2) == 2 ? 1.0 : -1.0;
    vec2 offset = along * (at_end ? 0.5 : -0.5) + vec2(-along.y, along.x) * side * half_width;
    vec4 clip = at_end ? to_clip : from_clip;
    // Divided here, so that pixels along and across grow evenly on the screen.
    gl_Position = vec4(clip.xyz / clip.w + vec3(offset / half_picture, 0.0), 1.0);

    // The sum over a column of the beam stays the same at any zoom, for rays lie apart as pixels per mm;
    // across a ray the profile (1 - x^2)^2 adds up to 16/15 of its half width.
    float level = u_ray_level * pixels_per_mm / (half_width * 16.0 / 15.0);
    level = 0.7 * (1.0 - exp(-level / 0.7));
    v_light = LIGHT_GROUND ? ink_density(RAY_COLOUR) * level : RAY_COLOUR * level;
#ifdef LIGHT_MOVES
    v_path = vec2(at_end ? path.y : path.x, 1.0) / clip.w;
#endif
    v_length = length_px;
    v_share = at_end ? shares.y : shares.x;
    v_at = vec2(at_end ? length_px + 0.5 : -0.5, side);
}
