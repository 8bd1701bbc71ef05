// The finished window in red light alone: red as bright as the colour was, no green, no blue.
in vec2 v_uv;
out vec4 o_colour;

uniform sampler2D u_picture;  // display colours
uniform float u_brightness;   // of what was white, 0 to 1

void main() {
    vec3 shown = texelFetch(u_picture, ivec2(gl_FragCoord.xy), 0).rgb;
    float bright = u_brightness * luminance(linear_of(shown));
    o_colour = vec4(display(vec3(bright)).r, 0.0, 0.0, 1.0);
}
