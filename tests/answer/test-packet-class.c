/* test-packet-class.c - what leaves the farm with the packets of the whole class. */
#include "farm.h"
#include "numbers.h"

#include "answer/stead-packet-answer.h"
#include "answer/stead-packet-class.h"
#include "answer/stead-words.h"

static gint64
person (Farm            *farm,
        const char      *name,
        SteadPersonRole  role,
        SteadDay         left_on)
{
  SteadPerson one = { .name = (char *) name, .role = role, .left_on = left_on };

  FARM_DO (farm, stead_person_repo_save (farm->store, &one, &farm_error));
  return one.id;
}

static void
packet (Farm       *farm,
        const char *name,
        gint64      who,
        gboolean    pictures,
        gboolean    names)
{
  g_autoptr(SteadPacket) one = stead_packet_usual (farm->store, farm->today, NULL);

  one->name = g_strdup (name);
  one->person_id = who;
  one->with_pictures = pictures;
  one->with_names = names;
  FARM_DO (farm, stead_packet_repo_save (farm->store, one, &farm_error));
}

static void
assert_class (Farm       *farm,
              guint       packets,
              guint       pictures,
              guint       names,
              guint       people,
              const char *words)
{
  g_autoptr(GError) error = NULL;
  g_autoptr(SteadPacketClass) class = stead_packet_class_new (farm->store, &error);
  g_autofree char *plain = NULL;

  g_assert_no_error (error);
  g_assert_cmpuint (class->n_packets, ==, packets);
  g_assert_cmpuint (class->n_pictures, ==, pictures);
  g_assert_cmpuint (class->n_names, ==, names);
  g_assert_cmpuint (class->people->len, ==, people);
  plain = stead_words_plain (class->sentence);
  if (farm_in_english ())
    g_assert_cmpstr (plain, ==, words);
}

/* An advisor gets no packet; a student without one gets the usual, which shows nobody else. */
static void
test_usual (Farm          *farm,
            gconstpointer  data)
{
  assert_class (farm, 0, 0, 0, 0, "0 packets leave the farm, each with a name, hours, skills and thoughts. "
                                  "None of them shows pictures. None of them names others.");
  person (farm, "Advisor", STEAD_PERSON_ADVISOR, STEAD_DAY_NONE);
  person (farm, "Ada B.", STEAD_PERSON_STUDENT, STEAD_DAY_NONE);
  assert_class (farm, 1, 0, 0, 1, "1 packet leaves the farm, with a name, hours, skills and thoughts. "
                                  "None of them shows pictures. None of them names others.");
}

/* One packet of Ada and the usual one for Bo; then two of Ada and Bo's own. */
static void
test_saved (Farm          *farm,
            gconstpointer  data)
{
  gint64 ada = person (farm, "Ada B.", STEAD_PERSON_STUDENT, STEAD_DAY_NONE);
  gint64 bo = person (farm, "Bo C.", STEAD_PERSON_STUDENT, STEAD_DAY_NONE);

  packet (farm, "First", ada, TRUE, TRUE);
  assert_class (farm, 2, 1, 1, 2, "2 packets leave the farm, each with a name, hours, skills and thoughts. "
                                  "1 of them shows pictures. 1 of them names others who agreed to it.");
  packet (farm, "Second", ada, TRUE, TRUE);
  packet (farm, "Bo's", bo, FALSE, FALSE);
  assert_class (farm, 3, 2, 2, 2, "3 packets leave the farm, each with a name, hours, skills and thoughts. "
                                  "2 of them show pictures. 2 of them name others who agreed to it.");
}

#define ADD(name, test) g_test_add ("/answer/packet-class/" name, Farm, NULL, farm_set_up, test, farm_tear_down)

int
main (int    argc,
      char **argv)
{
  farm_start (&argc, &argv);
  ADD ("usual", test_usual);
  ADD ("saved", test_saved);
  return g_test_run ();
}
