/* test-presence.c - who comes second is told who has the farm, may look and not write;
 * a mark that a crash left is no obstacle. */
#define _GNU_SOURCE 1   /* F_OFD_SETLK */
#include "config.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "store-fixture.h"
#include "store/stead-presence.h"

typedef struct
{
  char *folder, *path, *mark;
} Room;

static void
set_up (Room          *room,
        gconstpointer  data)
{
  g_autoptr(SteadStore) store = NULL;

  room->folder = fixture_folder ();
  room->path = g_build_filename (room->folder, "farm.steading", NULL);
  room->mark = g_build_filename (room->folder, ".farm.steading.in-use", NULL);
  store = stead_store_create (room->path, "Farm", NULL);
  fixture_fill (store);
}

static void
tear_down (Room          *room,
           gconstpointer  data)
{
  g_free (room->path);
  g_free (room->mark);
  fixture_remove (room->folder);
}

static SteadStore *
open_it (const char *path)
{
  g_autoptr(GError) error = NULL;
  SteadStore *store = stead_store_open (path, STEAD_STORE_OPEN_DEFAULT, &error);

  g_assert_no_error (error);
  return store;
}

static void
assert_ours (SteadStore *store)
{
  g_autofree char *holder = stead_store_hold (store);

  g_assert_null (holder);
  g_assert_false (stead_store_is_read_only (store));
  fixture_act (store, "person", "INSERT INTO person (name, role) SELECT 'P' || count(*), 'student' FROM person");
}

static void
assert_theirs (SteadStore *store,
               const char *words)
{
  g_autofree char *holder = stead_store_hold (store);
  g_autoptr(GError) error = NULL;

  g_assert_nonnull (holder);
  g_test_message ("%s", holder);
  g_assert_nonnull (strstr (holder, words));
  g_assert_nonnull (strstr (holder, "look at it here"));
  g_assert_true (stead_store_is_read_only (store));
  g_assert_cmpint (fixture_number (store, "SELECT count(*) FROM batch"), ==, 1);   /* looking is fine */
  g_assert_false (stead_store_begin (store, "eggs", &error));
  g_assert_error (error, STEAD_STORE_ERROR, STEAD_STORE_ERROR_READ_ONLY);
}

static void
test_two_windows (Room          *room,
                  gconstpointer  data)
{
  g_autoptr(SteadStore) one = open_it (room->path);
  g_autoptr(SteadStore) two = open_it (room->path);
  g_autoptr(SteadStore) three = NULL;

  assert_ours (one);
  assert_ours (one);   /* asked twice, it is ours still */
  g_assert_true (g_file_test (room->mark, G_FILE_TEST_EXISTS));
  assert_theirs (two, "another window");
  g_clear_object (&two);
  assert_ours (one);   /* who only looked takes nothing along */

  g_clear_object (&one);
  g_assert_false (g_file_test (room->mark, G_FILE_TEST_EXISTS));
  three = open_it (room->path);
  assert_ours (three);
  stead_store_let_go (three);
  g_assert_false (g_file_test (room->mark, G_FILE_TEST_EXISTS));
}

/* The same farm by another name. */
static void
test_link (Room          *room,
           gconstpointer  data)
{
  g_autofree char *other = g_build_filename (room->folder, "other.steading", NULL);
  g_autoptr(SteadStore) one = open_it (room->path);
  g_autoptr(SteadStore) two = NULL;

  g_assert_cmpint (symlink (room->path, other), ==, 0);
  two = open_it (other);
  assert_ours (one);
  assert_theirs (two, "another window");
}

/* A program of its own that holds the mark, with a text as another computer writes it. */
static pid_t
start_holder (Room       *room,
              const char *text)
{
  int ready[2];
  char byte;
  pid_t child;

  g_assert_cmpint (pipe (ready), ==, 0);
  child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    {
      struct flock wish = { .l_type = F_WRLCK, .l_whence = SEEK_SET };
      int fd = open (room->mark, O_RDWR | O_CREAT | O_CLOEXEC, 0666);

      if (fd < 0 || fcntl (fd, F_OFD_SETLK, &wish) != 0 || ftruncate (fd, 0) != 0 ||
          write (fd, text, strlen (text)) < 0 || write (ready[1], "x", 1) != 1)
        _exit (1);
      pause ();
      _exit (0);
    }
  g_assert_cmpint (read (ready[0], &byte, 1), ==, 1);
  close (ready[0]);
  close (ready[1]);
  return child;
}

static void
end_holder (pid_t child)
{
  int status;

  kill (child, SIGKILL);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
}

/* The second is told; once the first is killed, its mark is there and means nothing. */
static void
test_other_program (Room          *room,
                    gconstpointer  data)
{
  pid_t child = start_holder (room, "ana\nlab-3\n4711\n1772532000\n");
  g_autoptr(SteadStore) second = open_it (room->path);
  g_autoptr(SteadStore) third = NULL;

  assert_theirs (second, "ana opened this farm on the computer “lab-3” at 2026-03-03, 10:00");
  end_holder (child);
  g_assert_true (g_file_test (room->mark, G_FILE_TEST_EXISTS));
  third = open_it (room->path);
  assert_ours (third);
}

/* Whatever the mark says is shown as a few words, or not at all. */
static void
test_strange_marks (Room          *room,
                    gconstpointer  data)
{
  static const char * const texts[] = {
    "", "\n", "a\nb\n", "\xff\xfe\n\xff\nx\ny\n", "<b>x</b>%s%n\n%s\n-1\n99999999999999999999\n",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      pid_t child = start_holder (room, texts[i]);
      g_autoptr(SteadStore) store = open_it (room->path);
      g_autofree char *holder = stead_store_hold (store);

      end_holder (child);
      g_assert_nonnull (holder);
      g_assert_true (g_utf8_validate (holder, -1, NULL));
      g_assert_cmpint (g_utf8_strlen (holder, -1), <, 400);
    }
}

/* A mark that is no file of ours is not followed and not written to. */
static void
test_mark_is_a_link (Room          *room,
                     gconstpointer  data)
{
  g_autofree char *victim = g_build_filename (room->folder, "letter.txt", NULL);
  g_autofree char *text = NULL;
  g_autoptr(SteadStore) store = open_it (room->path);

  g_assert_true (g_file_set_contents (victim, "Dear hens", -1, NULL));
  g_assert_cmpint (symlink (victim, room->mark), ==, 0);
  assert_ours (store);
  g_assert_true (g_file_get_contents (victim, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "Dear hens");
}

static void
test_memory (Room          *room,
             gconstpointer  data)
{
  g_autoptr(SteadStore) store = stead_store_create_memory ("Farm", NULL);

  assert_ours (store);
}

#define ADD(name, test) g_test_add ("/store/presence/" name, Room, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("two-windows", test_two_windows);
  ADD ("link", test_link);
  ADD ("other-program", test_other_program);
  ADD ("strange-marks", test_strange_marks);
  ADD ("mark-is-a-link", test_mark_is_a_link);
  ADD ("memory", test_memory);
  return g_test_run ();
}
