/* test-learn-repo.c - skills, thoughts, goals, roles, pictures, events and packets. */
#include "config.h"

#include <math.h>

#include "repo-fixture.h"
#include "store/stead-event-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-packet-repo.h"
#include "store/stead-place-repo.h"
#include "store/stead-reflection-repo.h"
#include "store/stead-shot-repo.h"
#include "store/stead-shown-repo.h"
#include "store/stead-skill-repo.h"
#include "store/stead-work-repo.h"

static SteadSkill *
skill_new (Farm       *farm,
           const char *code,
           const char *words)
{
  SteadSkill *skill = g_new0 (SteadSkill, 1);

  skill->code = g_strdup (code);
  skill->words = g_strdup (words);
  skill->area = g_strdup ("Animals");
  skill->retired_on = STEAD_DAY_NONE;
  ACT (farm, stead_skill_repo_save (farm->store, skill, err));
  return skill;
}

/* --- skills ----------------------------------------------------------------------- */

static void
test_skill (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadSkill) skill = skill_new (farm, " AS.06 ", "  Collect and grade eggs ");
  g_autoptr(SteadSkill) other = skill_new (farm, NULL, "Read a scale");
  g_autoptr(GPtrArray) list = stead_skill_repo_list (farm->store, FALSE, NULL);
  const SteadSkill *first = list->pdata[0];
  SteadSkillTry try_ = { .skill_id = skill->id, .person_id = farm->student, .day = TODAY, .level = STEAD_SKILL_ALONE };

  g_assert_cmpuint (list->len, ==, 2);
  g_assert_cmpstr (first->code, ==, "AS.06");
  g_assert_cmpstr (first->words, ==, "Collect and grade eggs");
  /* Nobody tried it: it goes.  Somebody did: it is retired, and the try stays. */
  ACT (farm, stead_skill_repo_remove (farm->store, other->id, err));
  ACT (farm, stead_skill_repo_save_try (farm->store, &try_, err));
  ACT (farm, stead_skill_repo_remove (farm->store, skill->id, err));
  g_clear_pointer (&list, g_ptr_array_unref);
  list = stead_skill_repo_list (farm->store, FALSE, NULL);
  g_assert_cmpuint (list->len, ==, 0);
  g_clear_pointer (&list, g_ptr_array_unref);
  list = stead_skill_repo_list (farm->store, TRUE, NULL);
  g_assert_cmpuint (list->len, ==, 1);
  farm_assert_undo (farm);
}

static void
test_skill_refuses (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadSkill) skill = skill_new (farm, "AS.06", "Collect eggs");
  g_autofree char *long_words = g_strnfill (401, 'a');
  SteadSkill bad = { .words = (char *) " ", .retired_on = STEAD_DAY_NONE };
  SteadSkillTry try_ = { .skill_id = skill->id, .person_id = farm->student, .day = TODAY, .level = STEAD_SKILL_SAW };

  INVALID (farm, stead_skill_repo_save (farm->store, &bad, err), "own words");
  bad.words = long_words;
  INVALID (farm, stead_skill_repo_save (farm->store, &bad, err), "400");
  bad.words = (char *) "Other";
  bad.code = (char *) "AS.06";
  INVALID (farm, stead_skill_repo_save (farm->store, &bad, err), "AS.06");
  try_.day = TODAY + 1;
  INVALID (farm, stead_skill_repo_save_try (farm->store, &try_, err), "still to come");
  try_.day = TODAY;
  try_.level = 5;
  INVALID (farm, stead_skill_repo_save_try (farm->store, &try_, err), "how well");
  try_.level = STEAD_SKILL_SAW;
  try_.person_id = 0;
  INVALID (farm, stead_skill_repo_save_try (farm->store, &try_, err), "person");
}

static void
test_checked_stays (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadSkill) skill = skill_new (farm, NULL, "Collect eggs");
  gint64 entry = farm_entry (farm, TODAY - 3, 22, 2, 0);
  SteadSkillTry try_ = { .skill_id = skill->id, .person_id = farm->student, .day = TODAY, .level = STEAD_SKILL_SAW };
  g_autoptr(GPtrArray) tries = NULL;
  const SteadSkillTry *saved;

  ACT (farm, stead_skill_repo_save_try (farm->store, &try_, err));
  INVALID (farm, stead_skill_repo_check (farm->store, try_.id, farm->student, err), "advisor");
  ACT (farm, stead_skill_repo_check (farm->store, try_.id, farm->advisor, err));
  INVALID (farm, stead_skill_repo_save_try (farm->store, &try_, err), "checked");
  INVALID (farm, stead_skill_repo_drop_try (farm->store, try_.id, err), "checked");
  INVALID (farm, stead_skill_repo_add_evidence (farm->store, try_.id, STEAD_EVIDENCE_ENTRY, entry, err), "checked");
  INVALID (farm, stead_skill_repo_drop_evidence (farm->store, try_.id, STEAD_EVIDENCE_ENTRY, entry, err), "checked");
  tries = stead_skill_repo_tries (farm->store, farm->student, NULL);
  saved = tries->pdata[0];
  g_assert_cmpint (saved->checked_by, ==, farm->advisor);
  g_assert_cmpint (saved->checked_on, ==, TODAY);
  g_assert_nonnull (saved->checker_name);
  farm_assert_undo (farm);
}

static void
test_evidence (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadSkill) skill = skill_new (farm, NULL, "Collect eggs");
  gint64 entry = farm_entry (farm, TODAY - 3, 22, 2, 0);
  gint64 receipt = farm_receipt (farm, farm->feed, TODAY - 2, 20, 1899, FALSE);
  SteadSkillTry try_ = { .skill_id = skill->id, .person_id = farm->student, .day = TODAY, .level = STEAD_SKILL_SAW };
  g_autoptr(GPtrArray) found = NULL;
  const SteadEvidence *row;

  ACT (farm, stead_skill_repo_save_try (farm->store, &try_, err));
  ACT (farm, stead_skill_repo_add_evidence (farm->store, try_.id, STEAD_EVIDENCE_ENTRY, entry, err));
  ACT (farm, stead_skill_repo_add_evidence (farm->store, try_.id, STEAD_EVIDENCE_RECEIPT, receipt, err));
  REFUSE (farm, stead_skill_repo_add_evidence (farm->store, try_.id, STEAD_EVIDENCE_SALE, 77, err),
          STEAD_STORE_ERROR_NOT_FOUND, "");
  found = stead_skill_repo_evidence (farm->store, farm->student, NULL);
  g_assert_cmpuint (found->len, ==, 2);
  row = found->pdata[0];
  g_assert_cmpint (row->what, ==, STEAD_EVIDENCE_ENTRY);
  g_assert_cmpstr (row->name, ==, "Hens 1");
  g_assert_cmpfloat (row->a, ==, 22);
  g_assert_cmpint (row->target_id, ==, farm->flock);
  row = found->pdata[1];
  g_assert_cmpfloat (row->a, ==, 1899);
  ACT (farm, stead_skill_repo_drop_evidence (farm->store, try_.id, STEAD_EVIDENCE_RECEIPT, receipt, err));
  g_clear_pointer (&found, g_ptr_array_unref);
  found = stead_skill_repo_evidence (farm->store, farm->student, NULL);
  g_assert_cmpuint (found->len, ==, 1);
  ACT (farm, stead_skill_repo_add_evidence (farm->store, try_.id, STEAD_EVIDENCE_RECEIPT, receipt, err));
  farm_assert_undo (farm);
  /* A row that is gone is said to be gone. */
  fixture_act (farm->store, "x", "DELETE FROM batch_entry");
  g_clear_pointer (&found, g_ptr_array_unref);
  found = stead_skill_repo_evidence (farm->store, farm->student, NULL);
  g_assert_true (((const SteadEvidence *) found->pdata[0])->is_gone);
  g_assert_false (((const SteadEvidence *) found->pdata[1])->is_gone);
}

static void
test_offer (void)
{
  g_autoptr(Farm) farm = farm_new ();
  gint64 id = farm_entry (farm, TODAY - 3, 22, 2, 0);
  SteadWorkSpan span = { .person_id = farm->student, .day = TODAY - 1, .from_at = G_MININT64, .minutes = 60,
                         .duty = (char *) "Feeding" };
  g_autoptr(GPtrArray) offers = NULL;
  const SteadEvidence *first;
  guint entries = 0;

  farm_entry (farm, TODAY - 40, 20, 2, 0);
  fixture_act (farm->store, "x", "UPDATE batch_entry SET person_id = (SELECT min (id) FROM person WHERE role = 'student')");
  ACT (farm, stead_work_repo_add (farm->store, &span, err));
  offers = stead_skill_repo_offer (farm->store, farm->student, TODAY - 7, TODAY, NULL);
  first = offers->pdata[0];
  g_assert_cmpint (first->what, ==, STEAD_EVIDENCE_WORK);
  g_assert_cmpfloat (first->a, ==, 60);
  for (guint i = 0; i < offers->len; i++)
    {
      const SteadEvidence *offer = offers->pdata[i];

      if (offer->what == STEAD_EVIDENCE_ENTRY)
        g_assert_cmpint (offer->row_id, ==, id);
      entries += offer->what == STEAD_EVIDENCE_ENTRY;
    }
  g_assert_cmpuint (entries, ==, 1);
}

/* A reading that is in no list is of a cold place, or of a thermometer that was tried. */
static void
test_reading_of_a_place (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadPlaceFacts cooler = { .name = (char *) "Kitchen refrigerator", .kind = STEAD_PLACE_KITCHEN, .area_m2 = NAN };
  SteadInstrument probe = { .name = (char *) "Probe 1", .step = NAN, .error = NAN, .retired_on = STEAD_DAY_NONE };
  SteadShown air = { .at = stead_time_midnight (TODAY - 1), .kind = (char *) "air_temp", .value = 3, .held_s = NAN,
                     .person_id = farm->student };
  SteadShown ice = { .at = air.at + 3600, .kind = (char *) STEAD_SHOWN_ICE_BATH, .value = 0, .held_s = NAN,
                     .person_id = farm->student };
  g_autoptr(GPtrArray) offers = NULL;

  ACT (farm, stead_place_repo_save (farm->store, &cooler, err));
  ACT (farm, stead_instrument_repo_save (farm->store, &probe, err));
  air.place_id = cooler.id;
  ice.instrument_id = probe.id;
  ACT (farm, stead_shown_repo_add (farm->store, &air, err));
  ACT (farm, stead_shown_repo_add (farm->store, &ice, err));
  offers = stead_skill_repo_offer (farm->store, farm->student, TODAY - 7, TODAY, NULL);
  g_assert_cmpuint (offers->len, >=, 2);
  g_assert_cmpstr (((const SteadEvidence *) offers->pdata[0])->name, ==, "Probe 1");
  g_assert_cmpstr (((const SteadEvidence *) offers->pdata[1])->name, ==, "Kitchen refrigerator");
}

/* --- thoughts, goals, roles ---------------------------------------------------------- */

static void
test_reflection (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadReflection thought = { .person_id = farm->student, .day = TODAY, .question = (char *) "Lay fell. Why?",
                              .text = (char *) "We closed the vents at night. 卵 🥚", .batch_id = farm->flock };
  SteadGoal goal = { .person_id = farm->student, .words = (char *) "200 dozen", .set_on = TODAY - 30,
                     .due_on = TODAY + 30, .reached_on = STEAD_DAY_NONE };
  SteadRoleHeld role = { .person_id = farm->student, .words = (char *) "Treasurer", .from_on = TODAY - 60,
                         .to_on = STEAD_DAY_NONE };
  g_autoptr(GPtrArray) list = NULL;

  ACT (farm, stead_reflection_repo_save (farm->store, &thought, err));
  ACT (farm, stead_goal_repo_save (farm->store, &goal, err));
  ACT (farm, stead_role_held_repo_save (farm->store, &role, err));
  list = stead_reflection_repo_list (farm->store, farm->student, NULL);
  g_assert_cmpstr (((const SteadReflection *) list->pdata[0])->text, ==, thought.text);
  g_assert_cmpint (((const SteadReflection *) list->pdata[0])->batch_id, ==, farm->flock);
  thought.text = (char *) "\n ";
  INVALID (farm, stead_reflection_repo_save (farm->store, &thought, err), "Write what you think");
  goal.due_on = TODAY - 31;
  INVALID (farm, stead_goal_repo_save (farm->store, &goal, err), "on or after");
  goal.due_on = STEAD_DAY_NONE;
  goal.reached_on = TODAY + 1;
  INVALID (farm, stead_goal_repo_save (farm->store, &goal, err), "still to come");
  role.to_on = TODAY - 61;
  INVALID (farm, stead_role_held_repo_save (farm->store, &role, err), "before the first");
  ACT (farm, stead_reflection_repo_drop (farm->store, thought.id, err));
  ACT (farm, stead_goal_repo_drop (farm->store, goal.id, err));
  ACT (farm, stead_role_held_repo_drop (farm->store, role.id, err));
  REFUSE (farm, stead_goal_repo_drop (farm->store, goal.id, err), STEAD_STORE_ERROR_NOT_FOUND, "");
  farm_assert_undo (farm);
}

/* --- pictures ------------------------------------------------------------------------ */

static gint64
picture_new (Farm *farm)
{
  g_autoptr(GBytes) jpeg = g_bytes_new_static ("\xff\xd8\xff\xd9", 4);
  gint64 id = 0;

  ACT (farm, (id = stead_picture_repo_add (farm->store, jpeg, 4, 4, err)) > 0);
  return id;
}

static gint64
last_writer (Farm *farm)
{
  g_autoptr(GError) error = NULL;
  gint64 id = -1;

  g_assert_true (stead_reflection_repo_last_writer (farm->store, &id, &error));
  g_assert_no_error (error);
  return id;
}

/* Invented days: the newest of all decides, whatever it is; who left is not proposed. */
static void
test_last_writer (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadSkill) skill = skill_new (farm, "AS.06", "Collect eggs");
  SteadSkillTry try_ = { .skill_id = skill->id, .person_id = farm->student, .day = TODAY - 9, .level = STEAD_SKILL_SAW };
  SteadReflection thought = { .person_id = farm->advisor, .day = TODAY - 5, .text = (char *) "It went well." };
  SteadGoal goal = { .person_id = farm->student, .words = (char *) "200 dozen", .set_on = TODAY - 4,
                     .due_on = STEAD_DAY_NONE, .reached_on = STEAD_DAY_NONE };
  g_autoptr(GPtrArray) people = NULL;
  SteadPerson *student = NULL;

  g_assert_cmpint (last_writer (farm), ==, 0);
  ACT (farm, stead_skill_repo_save_try (farm->store, &try_, err));
  g_assert_cmpint (last_writer (farm), ==, farm->student);
  ACT (farm, stead_reflection_repo_save (farm->store, &thought, err));
  g_assert_cmpint (last_writer (farm), ==, farm->advisor);
  ACT (farm, stead_goal_repo_save (farm->store, &goal, err));
  g_assert_cmpint (last_writer (farm), ==, farm->student);
  people = stead_person_repo_list (farm->store, NULL);
  for (guint i = 0; i < people->len; i++)
    if (((SteadPerson *) people->pdata[i])->id == farm->student)
      student = people->pdata[i];
  student->left_on = TODAY;
  ACT (farm, stead_person_repo_save (farm->store, student, err));
  g_assert_cmpint (last_writer (farm), ==, farm->advisor);
}

static void
test_shot (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadShot) shot = g_new0 (SteadShot, 1);
  g_autoptr(GPtrArray) list = NULL;
  g_autofree char *agree = NULL;
  const SteadShot *saved;

  shot->day = TODAY;
  INVALID (farm, stead_shot_repo_save (farm->store, shot, err), "Choose a picture");
  shot->picture_id = picture_new (farm);
  INVALID (farm, stead_shot_repo_save (farm->store, shot, err), "what the picture shows");
  shot->caption = g_strdup ("Grading");
  shot->person_id = farm->student;
  shot->people = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_array_append_val (shot->people, farm->student);
  g_array_append_val (shot->people, farm->advisor);
  ACT_LEAVING (farm, stead_shot_repo_save (farm->store, shot, err), shot->id == 0);
  list = stead_shot_repo_list (farm->store, farm->student, NULL);
  saved = list->pdata[0];
  g_assert_cmpuint (saved->people->len, ==, 2);
  g_assert_cmpuint (saved->unasked->len, ==, 2);
  g_assert_false (stead_shot_may_show (saved));

  /* Both agree; one takes it back. */
  agree = g_strdup_printf ("INSERT INTO consent (person_id, what, given_on) SELECT id, 'picture', %d FROM person;"
                           "INSERT INTO consent (person_id, what, given_on) SELECT id, 'name', %d FROM person",
                           TODAY - 9, TODAY - 9);
  fixture_act (farm->store, "agree", agree);
  g_clear_pointer (&list, g_ptr_array_unref);
  list = stead_shot_repo_list (farm->store, 0, NULL);
  g_assert_true (stead_shot_may_show (list->pdata[0]));
  fixture_act (farm->store, "end", "UPDATE consent SET ended_on = given_on + 1 WHERE what = 'picture'"
               " AND person_id = (SELECT id FROM person WHERE role = 'advisor')");
  g_clear_pointer (&list, g_ptr_array_unref);
  list = stead_shot_repo_list (farm->store, 0, NULL);
  g_assert_cmpuint (((const SteadShot *) list->pdata[0])->unasked->len, ==, 1);
}

/* A picture goes with its shot, and when another takes its place. */
static void
test_shot_picture (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadShot) shot = g_new0 (SteadShot, 1);

  shot->day = TODAY;
  shot->caption = g_strdup ("Grading");
  shot->picture_id = picture_new (farm);
  ACT (farm, stead_shot_repo_save (farm->store, shot, err));
  shot->picture_id = picture_new (farm);
  ACT (farm, stead_shot_repo_save (farm->store, shot, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count(*) FROM picture"), ==, 1);
  ACT (farm, stead_shot_repo_drop (farm->store, shot->id, err));
  g_assert_cmpint (fixture_number (farm->store, "SELECT count(*) FROM picture"), ==, 0);
  farm_assert_undo (farm);
}

/* --- events -------------------------------------------------------------------------- */

static SteadEvent *
event_new (Farm *farm)
{
  SteadEvent *event = g_new0 (SteadEvent, 1);

  event->name = g_strdup ("Spring contest");
  event->kind = g_strdup ("poultry");
  event->day = TODAY + 20;
  ACT (farm, stead_event_repo_save (farm->store, event, err));
  return event;
}

static void
test_event (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadEvent) event = event_new (farm);
  SteadEventNeed hours = { .event_id = event->id, .what = STEAD_NEED_SECTION, .words = (char *) "hours",
                           .done_on = STEAD_DAY_NONE };
  SteadEventNeed coat = { .event_id = event->id, .what = STEAD_NEED_MATERIAL, .words = (char *) "White coat",
                          .done_on = TODAY };
  SteadEventScore score = { .event_id = event->id, .person_id = farm->student, .day = TODAY, .score = 61, .out_of = 80 };
  g_autoptr(GPtrArray) needs = NULL;
  g_autoptr(GPtrArray) scores = NULL;
  g_autoptr(GPtrArray) team = NULL;
  double minutes = -1;

  ACT (farm, stead_event_repo_join (farm->store, event->id, farm->student, " Speaker ", err));
  ACT (farm, stead_event_repo_join (farm->store, event->id, farm->student, "Writer", err));
  ACT (farm, stead_event_repo_save_need (farm->store, &hours, err));
  ACT (farm, stead_event_repo_save_need (farm->store, &coat, err));
  ACT (farm, stead_event_repo_save_score (farm->store, &score, err));
  team = stead_event_repo_team (farm->store, event->id, NULL);
  g_assert_cmpuint (team->len, ==, 1);
  g_assert_cmpstr (((const SteadEventPerson *) team->pdata[0])->role, ==, "Writer");
  needs = stead_event_repo_needs (farm->store, event->id, NULL);
  g_assert_cmpint (((const SteadEventNeed *) needs->pdata[1])->position, ==, 2);
  g_assert_cmpint (((const SteadEventNeed *) needs->pdata[1])->done_on, ==, TODAY);
  scores = stead_event_repo_scores (farm->store, event->id, NULL);
  g_assert_cmpfloat (((const SteadEventScore *) scores->pdata[0])->score, ==, 61);
  g_assert_nonnull (((const SteadEventScore *) scores->pdata[0])->person_name);
  g_assert_true (stead_event_repo_minutes (farm->store, event->id, 0, &minutes, NULL));
  g_assert_cmpfloat (minutes, ==, 0);
  ACT (farm, stead_event_repo_drop_score (farm->store, score.id, err));
  ACT (farm, stead_event_repo_drop_need (farm->store, coat.id, err));
  ACT (farm, stead_event_repo_leave (farm->store, event->id, farm->student, err));
  ACT (farm, stead_event_repo_delete (farm->store, event->id, err));
  farm_assert_undo (farm);
}

static void
test_event_refuses (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadEvent) event = event_new (farm);
  SteadEvent bad = { .name = (char *) "X", .kind = (char *) "", .day = TODAY };
  SteadEventScore score = { .event_id = event->id, .day = TODAY, .score = 81, .out_of = 80 };
  SteadEventNeed need = { .event_id = event->id, .words = (char *) " ", .done_on = STEAD_DAY_NONE };
  SteadReflection thought = { .person_id = farm->student, .day = TODAY, .text = (char *) "Good.",
                              .event_id = event->id };

  INVALID (farm, stead_event_repo_save (farm->store, &bad, err), "kind");
  bad.kind = (char *) "sales";
  bad.day = STEAD_DAY_NONE;
  INVALID (farm, stead_event_repo_save (farm->store, &bad, err), "day");
  INVALID (farm, stead_event_repo_save_score (farm->store, &score, err), "between 0");
  score.out_of = 0;
  INVALID (farm, stead_event_repo_save_score (farm->store, &score, err), "more than 0");
  score.out_of = 100;
  score.day = TODAY + 1;
  INVALID (farm, stead_event_repo_save_score (farm->store, &score, err), "still to come");
  INVALID (farm, stead_event_repo_save_need (farm->store, &need, err), "needs");
  ACT (farm, stead_reflection_repo_save (farm->store, &thought, err));
  INVALID (farm, stead_event_repo_delete (farm->store, event->id, err), "belong to this event");
}

/* --- packets ------------------------------------------------------------------------- */

static void
test_packet (void)
{
  g_autoptr(Farm) farm = farm_new ();
  g_autoptr(SteadPacket) packet = stead_packet_new ();
  g_autoptr(SteadPacket) saved = NULL;

  packet->name = g_strdup ("Spring");
  packet->from_on = TODAY - 100;
  packet->to_on = TODAY;
  INVALID (farm, stead_packet_repo_save (farm->store, packet, err), "whose packet");
  packet->person_id = farm->student;
  INVALID (farm, stead_packet_repo_save (farm->store, packet, err), "at least one");
  g_ptr_array_add (packet->sections, g_strdup ("hours"));
  g_ptr_array_add (packet->sections, g_strdup ("cover"));
  g_ptr_array_add (packet->sections, g_strdup ("cover"));
  INVALID (farm, stead_packet_repo_save (farm->store, packet, err), "twice");
  g_ptr_array_remove_index (packet->sections, 2);
  packet->to_on = TODAY - 101;
  INVALID (farm, stead_packet_repo_save (farm->store, packet, err), "before the first");
  packet->to_on = TODAY;
  ACT_LEAVING (farm, stead_packet_repo_save (farm->store, packet, err), packet->id == 0);
  saved = stead_packet_repo_get (farm->store, packet->id, NULL);
  g_assert_cmpuint (saved->sections->len, ==, 2);
  g_assert_cmpstr (saved->sections->pdata[0], ==, "hours");
  g_assert_false (saved->with_names);
  g_assert_false (saved->with_pictures);
  g_ptr_array_add (packet->sections, g_strdup ("nonsense"));
  INVALID (farm, stead_packet_repo_save (farm->store, packet, err), "nonsense");
  ACT (farm, stead_packet_repo_drop (farm->store, packet->id, err));
  farm_assert_undo (farm);
}

/* Hours that were corrected come once, as they are now; the correction is listed. */
static void
test_packet_hours (void)
{
  g_autoptr(Farm) farm = farm_new ();
  SteadWorkSpan span = { .person_id = farm->student, .day = TODAY - 9, .from_at = G_MININT64, .minutes = 60,
                         .duty = (char *) "Feeding", .batch_id = farm->flock };
  g_autoptr(GPtrArray) hours = NULL;
  g_autoptr(GPtrArray) fixes = NULL;
  g_autoptr(GArray) batches = NULL;
  g_autofree char *fix = NULL;

  ACT (farm, stead_work_repo_add (farm->store, &span, err));
  fix = g_strdup_printf ("INSERT INTO work_span (person_id, day, minutes, break_minutes, duty, paid, entered_on,"
                         " corrects_id, note) SELECT person_id, day, 45, 0, duty, 0, entered_on, id, 'Left early'"
                         " FROM work_span");
  fixture_act (farm->store, "fix", fix);
  hours = stead_packet_repo_hours (farm->store, farm->student, TODAY - 30, TODAY, NULL);
  g_assert_cmpuint (hours->len, ==, 1);
  g_assert_cmpfloat (((const SteadPacketHours *) hours->pdata[0])->minutes, ==, 45);
  fixes = stead_packet_repo_fixes (farm->store, farm->student, TODAY - 30, TODAY, NULL);
  g_assert_cmpuint (fixes->len, ==, 1);
  g_assert_cmpfloat (((const SteadPacketFix *) fixes->pdata[0])->before, ==, 60);
  g_assert_cmpfloat (((const SteadPacketFix *) fixes->pdata[0])->after, ==, 45);
  batches = stead_packet_repo_batches (farm->store, farm->student, TODAY - 30, TODAY, NULL);
  g_assert_cmpuint (batches->len, ==, 1);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/learn-repo/skill", test_skill);
  g_test_add_func ("/store/learn-repo/skill-refuses", test_skill_refuses);
  g_test_add_func ("/store/learn-repo/checked-stays", test_checked_stays);
  g_test_add_func ("/store/learn-repo/evidence", test_evidence);
  g_test_add_func ("/store/learn-repo/offer", test_offer);
  g_test_add_func ("/store/learn-repo/reading-of-a-place", test_reading_of_a_place);
  g_test_add_func ("/store/learn-repo/reflection", test_reflection);
  g_test_add_func ("/store/learn-repo/last-writer", test_last_writer);
  g_test_add_func ("/store/learn-repo/shot", test_shot);
  g_test_add_func ("/store/learn-repo/shot-picture", test_shot_picture);
  g_test_add_func ("/store/learn-repo/event", test_event);
  g_test_add_func ("/store/learn-repo/event-refuses", test_event_refuses);
  g_test_add_func ("/store/learn-repo/packet", test_packet);
  g_test_add_func ("/store/learn-repo/packet-hours", test_packet_hours);
  return g_test_run ();
}
