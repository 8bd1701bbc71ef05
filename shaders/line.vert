// A crisp line of a width in pixels, drawn a hair nearer to the viewer than the edge it follows.
layout(location = 0) in vec3 a_from;
layout(location = 1) in vec3 a_to;
layout(location = 2) in vec3 a_colour;
layout(location = 3) in vec2 a_style;  // width in pixels, dashed
flat out vec3 v_colour;
flat out vec3 v_style;  // half width and length in pixels, dashed
out vec2 v_at;          // pixels along and across

void main() {
    vec3 from = mix(a_from, eye.xyz, 0.002);
    vec3 to = mix(a_to, eye.xyz, 0.002);
    float near = picture.z * 1.01;
    float from_depth = dot(eye.xyz - from, back.xyz);
    float to_depth = dot(eye.xyz - to, back.xyz);
    gl_Position = vec4(0.0, 0.0, 2.0, 1.0);
    v_colour = vec3(0.0);
    v_style = vec3(0.0);
    v_at = vec2(0.0);
    if (from_depth < near && to_depth < near) return;
    if (from_depth < near) from = mix(from, to, (near - from_depth) / (to_depth - from_depth));
    if (to_depth < near) to = mix(to, from, (near - to_depth) / (from_depth - to_depth));

    vec4 from_clip = clip_from_world * vec4(from, 1.0);
    vec4 to_clip = clip_from_world * vec4(to, 1.0);
    vec2 half_picture = 0.5 * picture.xy;
    vec2 along = (to_clip.xy / to_clip.w - from_clip.xy / from_clip.w) * half_picture;
    float length_px = length(along);
    along = length_px > 1e-3 ? along / length_px : vec2(1.0, 0.0);

    float half_width = 0.5 * a_style.x * PIXEL_SCALE;
    float reach = half_width + 1.0;
    bool at_end = (gl_VertexID & 1) == 1;
    float side = (gl_VertexID & 2) == 2 ? 1.0 : -1.0;
    vec4 clip = at_end ? to_clip : from_clip;
    vec2 offset = along * (at_end ? reach : -reach) + vec2(-along.y, along.x) * side * reach;
    gl_Position = vec4(clip.xyz / clip.w + vec3(offset / half_picture, 0.0), 1.0);
    v_colour = display(LIGHT_GROUND ? ink(a_colour) : a_colour);
    v_style = vec3(half_width, length_px, a_style.y);
    v_at = vec2(at_end ? length_px + reach : -reach, side * reach);
}
