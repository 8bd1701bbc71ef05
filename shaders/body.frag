// Whole bodies.
in vec3 v_colour;
out vec4 o_colour;

void main() { o_colour = vec4(v_colour, 1.0); }
