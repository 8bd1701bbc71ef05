// Four by four pixels become one, by four smooth reads; the brightest cannot flood the picture.
in vec2 v_uv;
out vec4 o_light;

uniform sampler2D u_source;
uniform vec2 u_step;  // one pixel of the source

void main() {
    vec3 sum = min(texture(u_source, v_uv + u_step * vec2(-1.0, -1.0)).rgb, 6.0);
    sum += min(texture(u_source, v_uv + u_step * vec2(1.0, -1.0)).rgb, 6.0);
    sum += min(texture(u_source, v_uv + u_step * vec2(-1.0, 1.0)).rgb, 6.0);
    sum += min(texture(u_source, v_uv + u_step * vec2(1.0, 1.0)).rgb, 6.0);
    o_light = vec4(0.25 * sum, 1.0);
}
