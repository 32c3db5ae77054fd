// Groups of processes that end with this one, whatever ends it.
import { spawn } from 'node:child_process';

// Holds the other end of a pipe: when this process is gone, even killed, the pipe
// closes, and it ends all groups that it was told of.
const watcher = `
declare -A groups
while read -r change group; do
  if [ "$change" = + ]; then groups[$group]=1; else unset "groups[$group]"; fi
done
for group in "\${!groups[@]}"; do kill -KILL -- "-$group"; done`;

let pipe;

function tell(change, group) {
  if (!pipe) {
    const child = spawn('bash', ['-c', watcher], {
      detached: true,
      stdio: ['pipe', 'ignore', 'ignore'],
    });
    child.unref();
    child.stdin.unref();
    pipe = child.stdin;
  }
  pipe.write(`${change} ${group}\n`);
}

/**
 * Has the group of a child that leads one end with this process. Gives what ends it at
 * once, as an empty battery would.
 */
export function endWithThis(child) {
  const ended = new Promise((resolve) => child.once('exit', resolve));
  tell('+', child.pid);
  return async () => {
    try {
      process.kill(-child.pid, 'SIGKILL');
    } catch (error) {
      if (error.code !== 'ESRCH') throw error; // all of it has ended by itself
    }
    if (child.exitCode === null && child.signalCode === null) await ended;
    tell('-', child.pid);
  };
}

/** Starts a program that leads a group, which ends with this process. */
export function startGroup(program, args, options) {
  const child = spawn(program, args, { detached: true, ...options });
  return { child, kill: endWithThis(child) };
}
