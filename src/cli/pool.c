#include "cli/pool.h"

#include <pthread.h>
#include <stdatomic.h>
#include <stdbool.h>

struct pool {
	size_t n;
	void (*work)(void *user, unsigned thread, size_t i);
	void *user;
	atomic_size_t next;
};

static void run_jobs(struct pool *p, unsigned thread)
{
	for (size_t i; (i = atomic_fetch_add(&p->next, 1)) < p->n;)
		p->work(p->user, thread, i);
}

static void *run_second(void *pool)
{
	run_jobs(pool, 1);
	return NULL;
}

void pool_run(unsigned threads, size_t n,
    void (*work)(void *user, unsigned thread, size_t i), void *user)
{
	struct pool p = { n, work, user, 0 };
	pthread_t second;
	bool two = threads > 1 && n > 1 && !pthread_create(&second, NULL, run_second, &p);

	run_jobs(&p, 0);
	if (two)
		pthread_join(second, NULL);
}
