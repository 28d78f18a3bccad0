/* peak COMMAND ARG...: runs a command without its output and prints the most memory, in
 * KiB, that it held at a time. Its exit status is that of the command. */
#define _DEFAULT_SOURCE
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

int main(int argc, char **argv)
{
	struct rusage used;
	int status;
	pid_t child;

	if (argc < 2)
		return 2;
	child = fork();
	if (!child) {
		if (!freopen("/dev/null", "w", stdout))
			_exit(126);
		execvp(argv[1], argv + 1);
		_exit(127);
	}
	if (child < 0 || waitpid(child, &status, 0) < 0 || getrusage(RUSAGE_CHILDREN, &used))
		return 3;
	printf("%ld\n", used.ru_maxrss);
	return WIFEXITED(status) ? WEXITSTATUS(status) : 3;
}
