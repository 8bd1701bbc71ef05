// A small sign that faces the viewer and keeps its size in pixels.
layout(location = 0) in vec3 a_at;
layout(location = 1) in vec3 a_colour;
layout(location = 2) in vec2 a_style;  // size in pixels, shape
flat out vec3 v_colour;
flat out vec2 v_style;  // half size in pixels, shape
out vec2 v_at;          // pixels from the middle

void main() {
    vec3 at = mix(a_at, eye.xyz, 0.004);
    float half_size = 0.5 * a_style.x * PIXEL_SCALE;
    float reach = half_size + 2.5 * PIXEL_SCALE;
    v_at = reach * vec2((gl_VertexID & 1) == 1 ? 1.0 : -1.0, (gl_VertexID & 2) == 2 ? 1.0 : -1.0);
    v_colour = display(LIGHT_GROUND ? ink(a_colour) : a_colour);
    v_style = vec2(half_size, a_style.y);
    vec4 clip = clip_from_world * vec4(at, 1.0);
    gl_Position = clip + vec4(v_at / (0.5 * picture.xy) * clip.w, 0.0, 0.0);
}
