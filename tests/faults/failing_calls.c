/* Preloaded into the program, makes one of the system's calls on plain files fail as a full or broken disk would.
   BEAMFORK_FAIL="write 2 28": the second write and all after it fail with errno 28. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static int fails(const char* call) {
    static int met = 0;
    const char* wish = getenv("BEAMFORK_FAIL");
    char name[32];
    int from = 0;
    int number = 0;
    if (wish == NULL || sscanf(wish, "%31s %d %d", name, &from, &number) != 3) return 0;
    if (strcmp(name, call) != 0 || ++met < from) return 0;
    errno = number;
    return 1;
}

static int is_plain(int file) {
    struct stat status;
    return fstat(file, &status) == 0 && S_ISREG(status.st_mode);
}

ssize_t write(int file, const void* bytes, size_t count) {
    ssize_t (*real)(int, const void*, size_t) = dlsym(RTLD_NEXT, "write");
    return is_plain(file) && fails("write") ? -1 : real(file, bytes, count);
}

int fsync(int file) {
    int (*real)(int) = dlsym(RTLD_NEXT, "fsync");
    return is_plain(file) && fails("fsync") ? -1 : real(file);
}

int fchmod(int file, mode_t mode) {
    int (*real)(int, mode_t) = dlsym(RTLD_NEXT, "fchmod");
    return is_plain(file) && fails("fchmod") ? -1 : real(file, mode);
}

int mkstemp(char* name) {
    int (*real)(char*) = dlsym(RTLD_NEXT, "mkstemp");
    return fails("mkstemp") ? -1 : real(name);
}

int rename(const char* from, const char* to) {
    int (*real)(const char*, const char*) = dlsym(RTLD_NEXT, "rename");
    return fails("rename") ? -1 : real(from, to);
}
