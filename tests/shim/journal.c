/* Journals what a process writes under one folder, and when it syncs: op, path, offset, length, bytes.
 * Preloaded into the service by tests/tests/endurance/power.rs, which rebuilds the disk as a power cut leaves it. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static int journal = -1;

static int path_of(int fd, char *path, size_t size) {
    char link[64];
    const char *folder = getenv("SHIM_FOLDER");
    snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
    ssize_t length = readlink(link, path, size - 1);
    if (!folder || length <= 0) return 0;
    path[length] = 0;
    return strncmp(path, folder, strlen(folder)) == 0 && !strstr(path, "-shm");
}

static void raw(const void *bytes, size_t length) {
    while (length > 0) {
        long done = syscall(SYS_write, journal, bytes, length);
        if (done <= 0) _exit(97);
        bytes = (const char *)bytes + done;
        length -= (size_t)done;
    }
}

static void note(char op, const char *path, int64_t offset, const void *bytes, int64_t length) {
    pthread_mutex_lock(&lock);
    if (journal < 0) journal = (int)syscall(SYS_openat, AT_FDCWD, getenv("SHIM_LOG"), O_WRONLY | O_CREAT | O_APPEND, 0600);
    int64_t head[3] = {(int64_t)strlen(path), offset, length};
    raw(&op, 1);
    raw(head, sizeof head);
    raw(path, strlen(path));
    if (bytes) raw(bytes, (size_t)length);
    pthread_mutex_unlock(&lock);
}

#define REAL(name) static __typeof__(name) *real; if (!real) real = (__typeof__(name) *)dlsym(RTLD_NEXT, #name)

ssize_t pwrite64(int fd, const void *bytes, size_t length, off64_t offset) {
    REAL(pwrite64);
    char path[4096];
    ssize_t done = real(fd, bytes, length, offset);
    if (done > 0 && path_of(fd, path, sizeof path)) note('w', path, offset, bytes, done);
    return done;
}

ssize_t pwrite(int fd, const void *bytes, size_t length, off_t offset) { return pwrite64(fd, bytes, length, offset); }

ssize_t write(int fd, const void *bytes, size_t length) {
    REAL(write);
    char path[4096];
    int ours = path_of(fd, path, sizeof path);
    off64_t offset = ours ? lseek64(fd, 0, SEEK_CUR) : 0;
    ssize_t done = real(fd, bytes, length);
    if (done > 0 && ours) note('w', path, offset, bytes, done);
    return done;
}

int ftruncate64(int fd, off64_t length) {
    REAL(ftruncate64);
    char path[4096];
    int done = real(fd, length);
    if (done == 0 && path_of(fd, path, sizeof path)) note('t', path, length, NULL, 0);
    return done;
}

int ftruncate(int fd, off_t length) { return ftruncate64(fd, length); }

int fsync(int fd) {
    REAL(fsync);
    char path[4096];
    int done = real(fd);
    if (done == 0 && path_of(fd, path, sizeof path)) note('s', path, 0, NULL, 0);
    return done;
}

int fdatasync(int fd) {
    REAL(fdatasync);
    char path[4096];
    int done = real(fd);
    if (done == 0 && path_of(fd, path, sizeof path)) note('s', path, 0, NULL, 0);
    return done;
}

int unlink(const char *name) {
    REAL(unlink);
    const char *folder = getenv("SHIM_FOLDER");
    int done = real(name);
    if (done == 0 && folder && strncmp(name, folder, strlen(folder)) == 0 && !strstr(name, "-shm")) note('u', name, 0, NULL, 0);
    return done;
}
