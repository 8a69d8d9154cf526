// Runs a recogniser library that was built for Android's C library on one of another make: the library is mapped, its relocations are done and its
// imports are given the GNU C library's functions, by hand where the two differ. It proves that the code in the library works, not that a phone loads it.
//
// bionicrun LIBRARY MODEL GRAMMAR SOUND: prints the recogniser's final result. Built without LOADER it opens the library the ordinary way, for comparison.
#define _GNU_SOURCE
#include <dlfcn.h>
#include <elf.h>
#include <errno.h>
#include <fcntl.h>
#include <link.h>
#include <locale.h>
#include <pthread.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#define DIE(...) do { fprintf(stderr, __VA_ARGS__); fputc('\n', stderr); exit(1); } while (0)

#ifdef LOADER
// On arm64 bionic keeps its stack guard in the thread's slot 5, 40 bytes behind the thread pointer. The GNU C library puts the program's own thread
// variables there: this one keeps the place and is never written.
__thread char slots[128] __attribute__((aligned(16), tls_model("local-exec")));

static struct { uintptr_t base; const ElfW(Phdr) *ph; int n; const ElfW(Sym) *sym; const char *str; const uint32_t *hash; } lib;

// A mutex is 40 bytes on bionic and 48 here, and both it and a condition lie on 4 bytes there and on 8 here: the place holds a pointer to a real one, in its
// first 8 bytes that are aligned. Bits 14 and 15 of a mutex nobody used yet tell its kind (bionic's pthread_mutex.cpp).
static uintptr_t *slot(void *m) { return (uintptr_t *)(((uintptr_t)m + 7) & ~(uintptr_t)7); }
static pthread_mutex_t *real(void *m) {
	uintptr_t *at = slot(m), old = __atomic_load_n(at, __ATOMIC_ACQUIRE);
	if (old > 0xffff) return (pthread_mutex_t *)old;
	pthread_mutex_t *made = calloc(1, sizeof *made);
	pthread_mutexattr_t a;
	pthread_mutexattr_init(&a);
	pthread_mutexattr_settype(&a, (*(uint32_t *)m & 0xc000) == 0x4000 ? PTHREAD_MUTEX_RECURSIVE : PTHREAD_MUTEX_NORMAL);
	pthread_mutex_init(made, &a);
	if (!__atomic_compare_exchange_n(at, &old, (uintptr_t)made, 0, __ATOMIC_ACQ_REL, __ATOMIC_ACQUIRE)) { free(made); return (pthread_mutex_t *)old; }
	return made;
}
static int mutex_init(void *m, const pthread_mutexattr_t *a) {
	pthread_mutex_t *made = calloc(1, sizeof *made);
	*slot(m) = (uintptr_t)made;
	return pthread_mutex_init(made, a);
}
static int mutex_lock(void *m) { return pthread_mutex_lock(real(m)); }
static int mutex_trylock(void *m) { return pthread_mutex_trylock(real(m)); }
static int mutex_unlock(void *m) { return pthread_mutex_unlock(real(m)); }
static int mutex_destroy(void *m) {
	pthread_mutex_t *r = real(m);
	*slot(m) = 0;
	int e = pthread_mutex_destroy(r);
	free(r);
	return e;
}
static pthread_cond_t *cond(void *c) {
	uintptr_t *at = slot(c), old = __atomic_load_n(at, __ATOMIC_ACQUIRE);
	if (old) return (pthread_cond_t *)old;
	pthread_cond_t *made = calloc(1, sizeof *made);
	pthread_cond_init(made, NULL);
	if (!__atomic_compare_exchange_n(at, &old, (uintptr_t)made, 0, __ATOMIC_ACQ_REL, __ATOMIC_ACQUIRE)) { free(made); return (pthread_cond_t *)old; }
	return made;
}
static int cond_wait(void *c, void *m) { return pthread_cond_wait(cond(c), real(m)); }
static int cond_timedwait(void *c, void *m, const struct timespec *t) { return pthread_cond_timedwait(cond(c), real(m), t); }
static int cond_signal(void *c) { return pthread_cond_signal(cond(c)); }
static int cond_broadcast(void *c) { return pthread_cond_broadcast(cond(c)); }
static int cond_destroy(void *c) {
	pthread_cond_t *r = cond(c);
	*slot(c) = 0;
	int e = pthread_cond_destroy(r);
	free(r);
	return e;
}

// bionic's three standard files lie in one array.
static char sF[3][152];
static FILE *file(void *f) {
	ptrdiff_t d = (char *)f - sF[0];
	return d < 0 || d >= (ptrdiff_t)sizeof sF ? f : d < 152 ? stdin : d < 304 ? stdout : stderr;
}
static int f_fprintf(void *f, const char *s, ...) { va_list a; va_start(a, s); int n = vfprintf(file(f), s, a); va_end(a); return n; }
static int f_vfprintf(void *f, const char *s, va_list a) { return vfprintf(file(f), s, a); }
static int f_fputs(const char *s, void *f) { return fputs(s, file(f)); }
static int f_fputc(int c, void *f) { return fputc(c, file(f)); }
static size_t f_fwrite(const void *p, size_t s, size_t n, void *f) { return fwrite(p, s, n, file(f)); }
static int f_fflush(void *f) { return fflush(f ? file(f) : NULL); }
static void f_setlinebuf(void *f) { setlinebuf(file(f)); }
static int f_fileno(void *f) { return fileno(file(f)); }

// bionic numbers what sysconf tells in its own way (bits/sysconf.h).
static long conf(int name) {
	switch (name) {
	case 0x27: case 0x28: return sysconf(_SC_PAGESIZE);
	case 0x60: return sysconf(_SC_NPROCESSORS_CONF);
	case 0x61: return sysconf(_SC_NPROCESSORS_ONLN);
	case 0x62: return sysconf(_SC_PHYS_PAGES);
	}
	DIE("sysconf %#x: nobody translated it", name);
}
static int phdrs(int (*cb)(struct dl_phdr_info *, size_t, void *), void *data) {
	struct dl_phdr_info i = {.dlpi_addr = lib.base, .dlpi_name = "library", .dlpi_phdr = lib.ph, .dlpi_phnum = lib.n};
	int e = cb(&i, sizeof i, data);
	return e ? e : dl_iterate_phdr(cb, data);
}
static int property(const char *n, char *v) { *v = 0; return 0; }
static int logged(int p, const char *tag, const char *s, ...) { va_list a; va_start(a, s); int n = vfprintf(stderr, s, a); va_end(a); return n; }
static void said(const char *s) { fprintf(stderr, "abort: %s\n", s); }
static void assert2(const char *f, int l, const char *fn, const char *e) { DIE("%s:%d: %s: %s", f, l, fn, e); }
extern int __xpg_strerror_r(int, char *, size_t);
extern int *__errno_location(void);

static const struct { const char *name; void *at; } shims[] = {
	{"__errno", __errno_location}, {"__sF", sF}, {"__assert2", assert2}, {"__android_log_print", logged}, {"android_set_abort_message", said},
	{"__system_property_get", property}, {"sysconf", conf}, {"dl_iterate_phdr", phdrs}, {"strerror_r", __xpg_strerror_r},
	{"pthread_mutex_init", mutex_init}, {"pthread_mutex_lock", mutex_lock}, {"pthread_mutex_trylock", mutex_trylock},
	{"pthread_mutex_unlock", mutex_unlock}, {"pthread_mutex_destroy", mutex_destroy}, {"pthread_cond_wait", cond_wait},
	{"pthread_cond_timedwait", cond_timedwait}, {"pthread_cond_signal", cond_signal}, {"pthread_cond_broadcast", cond_broadcast},
	{"pthread_cond_destroy", cond_destroy}, {"fprintf", f_fprintf}, {"vfprintf", f_vfprintf}, {"fputs", f_fputs}, {"fputc", f_fputc},
	{"fwrite", f_fwrite}, {"fflush", f_fflush}, {"fileno", f_fileno}, {"setlinebuf", f_setlinebuf}, {"putc", f_fputc},
};

static void *own(const char *name) {
	for (uint32_t i = 1; i < lib.hash[1]; i++) // DT_HASH: the second number is how many names there are
		if (lib.sym[i].st_shndx && !strcmp(lib.str + lib.sym[i].st_name, name)) return (void *)(lib.base + lib.sym[i].st_value);
	return NULL;
}
static uintptr_t find(const ElfW(Sym) *s) {
	const char *name = lib.str + s->st_name;
	if (s->st_shndx) return lib.base + s->st_value;
	for (size_t i = 0; i < sizeof shims / sizeof *shims; i++)
		if (!strcmp(shims[i].name, name)) return (uintptr_t)shims[i].at;
	void *p = dlsym(RTLD_DEFAULT, name);
	if (!p && ELF64_ST_BIND(s->st_info) != STB_WEAK) DIE("nobody has %s", name);
	return (uintptr_t)p;
}
static void relocate(const ElfW(Rela) *r, size_t size) {
	for (size_t i = 0; i < size / sizeof *r; i++) {
		uintptr_t *at = (uintptr_t *)(lib.base + r[i].r_offset);
		const ElfW(Sym) *s = &lib.sym[ELF64_R_SYM(r[i].r_info)];
		switch (ELF64_R_TYPE(r[i].r_info)) {
		case R_AARCH64_RELATIVE: *at = lib.base + r[i].r_addend; break;
		case R_AARCH64_ABS64: case R_AARCH64_GLOB_DAT: case R_AARCH64_JUMP_SLOT: *at = find(s) + r[i].r_addend; break;
		default: DIE("relocation of kind %u", (unsigned)ELF64_R_TYPE(r[i].r_info));
		}
	}
}
static void load(const char *path) {
	if (!dlopen("libm.so.6", RTLD_NOW | RTLD_GLOBAL)) DIE("%s", dlerror());
	int fd = open(path, O_RDONLY);
	struct stat st;
	if (fd < 0 || fstat(fd, &st)) DIE("%s: %s", path, strerror(errno));
	char *raw = mmap(NULL, st.st_size, PROT_READ, MAP_PRIVATE, fd, 0);
	const ElfW(Ehdr) *h = (void *)raw;
	const ElfW(Phdr) *p = (void *)(raw + h->e_phoff), *dyn = NULL;
	size_t top = 0;
	for (int i = 0; i < h->e_phnum; i++) {
		if (p[i].p_type == PT_LOAD && p[i].p_vaddr + p[i].p_memsz > top) top = p[i].p_vaddr + p[i].p_memsz;
		if (p[i].p_type == PT_DYNAMIC) dyn = &p[i];
	}
	char *base = mmap(NULL, top, PROT_READ | PROT_WRITE | PROT_EXEC, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
	if (base == MAP_FAILED || !dyn) DIE("%s: it cannot be mapped", path);
	for (int i = 0; i < h->e_phnum; i++)
		if (p[i].p_type == PT_LOAD) memcpy(base + p[i].p_vaddr, raw + p[i].p_offset, p[i].p_filesz);
	__builtin___clear_cache(base, base + top);
	lib.base = (uintptr_t)base, lib.ph = (void *)(base + h->e_phoff), lib.n = h->e_phnum;
	uintptr_t v[64] = {0};
	for (const ElfW(Dyn) *d = (void *)(base + dyn->p_vaddr); d->d_tag; d++)
		if (d->d_tag > 0 && d->d_tag < 64) v[d->d_tag] = d->d_un.d_val;
	lib.sym = (void *)(base + v[DT_SYMTAB]), lib.str = base + v[DT_STRTAB], lib.hash = (void *)(base + v[DT_HASH]);
	if (!v[DT_HASH]) DIE("%s: no table of names", path);
	relocate((void *)(base + v[DT_RELA]), v[DT_RELASZ]);
	relocate((void *)(base + v[DT_JMPREL]), v[DT_PLTRELSZ]);
	void (**init)(int, char **, char **) = (void *)(base + v[DT_INIT_ARRAY]);
	for (size_t i = 0; i < v[DT_INIT_ARRAYSZ] / 8; i++)
		if (init[i] && init[i] != (void *)-1) init[i](0, NULL, environ);
}
#else
static void *handle;
static void load(const char *path) { if (!(handle = dlopen(path, RTLD_NOW | RTLD_LOCAL))) DIE("%s", dlerror()); }
static void *own(const char *name) { return dlsym(handle, name); }
#endif

int main(int n, char **arg) {
	if (n != 5) DIE("want: bionicrun LIBRARY MODEL GRAMMAR SOUND");
	load(arg[1]);
#define F(type, name, ...) type (*name)(__VA_ARGS__) = own(#name); if (!name) DIE("no " #name)
	F(void, vosk_set_log_level, int);
	F(void *, vosk_model_new, const char *);
	F(void *, vosk_recognizer_new_grm, void *, float, const char *);
	F(void, vosk_recognizer_set_words, void *, int);
	F(void, vosk_recognizer_set_max_alternatives, void *, int);
	F(int, vosk_recognizer_accept_waveform_s, void *, const short *, int);
	F(const char *, vosk_recognizer_final_result, void *);
	vosk_set_log_level(-2);
	void *model = vosk_model_new(arg[2]);
	if (!model) DIE("%s: the model does not load", arg[2]);
	fprintf(stderr, "model loaded\n");
	void *rec = vosk_recognizer_new_grm(model, 16000, arg[3]);
	if (!rec) DIE("no recogniser");
	vosk_recognizer_set_max_alternatives(rec, 3);
	vosk_recognizer_set_words(rec, 1);
	FILE *f = fopen(arg[4], "rb");
	if (!f) DIE("%s: %s", arg[4], strerror(errno));
	short pcm[3200];
	for (size_t k; (k = fread(pcm, 2, 3200, f)) > 0;) vosk_recognizer_accept_waveform_s(rec, pcm, k);
	puts(vosk_recognizer_final_result(rec));
	fflush(stdout);
	_exit(0);
}
