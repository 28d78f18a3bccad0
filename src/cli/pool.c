#include "cli/pool.h"

#include <pthread.h>
#include <stdatomic.h>
#include <stdbool.h>

struct pool {
	size_t n;
	void (*work)(void *user, size_t i);
	void *user;
	atomic_size_t next;
};

static void *run_jobs(void *user)
{
	struct pool *p = user;

	for (size_t i; (i = atomic_fetch_add(&p->next, 1)) < p->n;)
		p->work(p->user, i);
	return NULL;
}

void pool_run(size_t n, void (*work)(void *user, size_t i), void *user)
{
	struct pool p = { n, work, user, 0 };
	pthread_t second;
	bool two = n > 1 && !pthread_create(&second, NULL, run_jobs, &p);

	run_jobs(&p);
	if (two)
		pthread_join(second, NULL);
}
