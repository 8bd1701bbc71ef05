in vec2 v_at;
out vec4 o_colour;

uniform sampler2D u_picture;
uniform float u_level;

void main() {
    float radius = length(v_at);
    float coverage = clamp((1.0 - radius) / max(fwidth(radius), 1e-6) + 0.5, 0.0, 1.0);
    if (coverage <= 0.0) discard;
    o_colour = vec4(display(texture(u_picture, 0.5 + 0.5 * v_at).rgb * u_level), coverage);
}
