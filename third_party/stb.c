/* The bodies of the stb headers, compiled once and away from our own warnings and lint. */
#define STB_IMAGE_IMPLEMENTATION
#define STB_IMAGE_WRITE_IMPLEMENTATION
#define STB_TRUETYPE_IMPLEMENTATION
#include <stb_image.h>
#include <stb_image_write.h>
#include <stb_truetype.h>
