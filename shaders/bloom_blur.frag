// A Gaussian of nine taps by five smooth reads (weights 70, 56, 28, 8, 1 of the binomial row).
in vec2 v_uv;
out vec4 o_light;

uniform sampler2D u_source;
uniform vec2 u_step;

void main() {
    vec3 sum = texture(u_source, v_uv).rgb * 0.2734375;
    vec2 near = u_step * 1.3333333;
    vec2 far = u_step * 3.1111111;
    sum += (texture(u_source, v_uv + near).rgb + texture(u_source, v_uv - near).rgb) * 0.328125;
    sum += (texture(u_source, v_uv + far).rgb + texture(u_source, v_uv - far).rgb) * 0.03515625;
    o_light = vec4(sum, 1.0);
}
