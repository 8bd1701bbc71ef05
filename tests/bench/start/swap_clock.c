// Preloaded into the program by start_and_memory.sh: tells how long after BEAMFORK_STARTED the window's first two pictures
// were handed over. The first holds the panels alone, the second the 3D view, too.
#define _GNU_SOURCE
#include <dlfcn.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#include <unistd.h>

static double now(void) {
    struct timespec time;
    clock_gettime(CLOCK_REALTIME, &time);
    return (double)time.tv_sec + 1e-9 * (double)time.tv_nsec;
}

void glfwSwapBuffers(void* window) {
    static void (*swap)(void*);
    static int count;
    if (!swap) swap = (void (*)(void*))dlsym(RTLD_NEXT, "glfwSwapBuffers");
    swap(window);
    if (++count > 2) return;
    fprintf(stderr, "swap %d %.6f\n", count, now() - atof(getenv("BEAMFORK_STARTED")));
}
