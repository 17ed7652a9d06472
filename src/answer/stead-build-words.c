/* stead-build-words.c - the sentences about a build, and its cautions. */
#include "config.h"

#include "answer/stead-build-private.h"
#include "answer/stead-limits.h"
#include "answer/stead-rules.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
money (const SteadBuildAnswer *self,
       gint64                  cents)
{
  return stead_money_format (cents, self->farm->currency);
}

/* --- what it takes ------------------------------------------------------------------- */

static char *
drawing_sentence (const SteadBuildAnswer *self)
{
  g_autofree char *area = NULL;
  g_autofree char *round = NULL;

  if (self->trouble != NULL)
    return g_markup_escape_text (self->trouble, -1);
  if (self->build->kind == STEAD_BUILD_LIST)
    return NULL;
  area = stead_build_area_text (self->takeoff->area_m2, self->farm->units);
  round = stead_build_length_text (self->takeoff->perimeter_m, self->farm->units);
  /* Translators: size of a pen, and the way round it. */
  return g_strdup_printf (_("It holds %s, and it is %s round."), area, round);
}

static char *
room_sentence (const SteadBuildAnswer *self)
{
  for (guint i = 0; i < self->rooms->len; i++)
    {
      const SteadBuildRoom *room = self->rooms->pdata[i];

      if (room->is_short)
        /* Translators: what is too small, what it should be, what it is. */
        return g_strdup_printf (_("<b>%s</b> is too small: %s is needed, and the plan has %s."),
                                room->what, room->need, room->has);
    }
  return NULL;
}

static char *
price_sentence (const SteadBuildAnswer *self)
{
  g_autofree char *goal = money (self, self->goal_cents);
  g_autofree char *given = money (self, self->bill.given_cents);
  gulong n = self->n_unpriced;

  if (self->goal_cents == 0 && n == 0)
    return g_strdup (_("Nothing is on the bill yet."));
  if (n > 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "It costs <b>%s</b> so far; %lu thing has no price yet.",
                                         "It costs <b>%s</b> so far; %lu things have no price yet.", n), goal, n);
  if (self->bill.given_cents > 0)
    return g_strdup_printf (_("It costs <b>%s</b>, and things worth %s are given."), goal, given);
  return g_strdup_printf (_("It costs <b>%s</b>."), goal);
}

static char *
make_sentence (const SteadBuildAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *drawing = drawing_sentence (self);
  g_autofree char *room = room_sentence (self);
  g_autofree char *price = price_sentence (self);

  stead_words_add (text, drawing);
  stead_words_add (text, room);
  stead_words_add (text, price);
  return stead_words_end (text);
}

/* --- who pays --------------------------------------------------------------------------- */

static char *
have_sentence (const SteadBuildAnswer *self)
{
  g_autofree char *have = money (self, self->have_cents);
  g_autofree char *goal = money (self, self->goal_cents);
  g_autofree char *missing = money (self, self->goal_cents - self->have_cents);
  g_autofree char *share = NULL;

  if (isnan (self->share))
    return g_strdup (_("Without a price there is no goal yet."));
  if (self->have_cents >= self->goal_cents)
    return g_strdup_printf (_("All of the <b>%s</b> is there."), goal);
  share = stead_words_percent (self->share, 0);
  return g_strdup_printf (_("<b>%s</b> of %s is there, %s. %s is still missing."), have, goal, share, missing);
}

static char *
pledge_sentence (const SteadBuildAnswer *self)
{
  g_autofree char *pledged = money (self, self->pledged_cents);
  g_autofree char *expected = money (self, self->expected_cents);

  if (self->pledged_cents == 0)
    return NULL;
  return g_strdup_printf (_("Pledges of %s are open; by their chances about %s of it comes."), pledged, expected);
}

static char *
bound_sentence (const SteadBuildAnswer *self)
{
  gint64 all = 0;
  g_autofree char *bound = NULL;
  g_autofree char *idle = NULL;

  for (guint i = 0; i < self->bounds->len; i++)
    all += MAX (((const SteadBuildBound *) self->bounds->pdata[i])->cents, 0);
  if (all == 0)
    return NULL;
  bound = money (self, self->bound_cents);
  idle = money (self, all - self->bound_cents);
  if (all > self->bound_cents)
    return g_strdup_printf (_("%s of it is bound to what the givers said; another %s of grants does not fit this build."), bound, idle);
  return g_strdup_printf (_("%s of it is bound to what the givers said."), bound);
}

static char *
make_money_sentence (const SteadBuildAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *have = have_sentence (self);
  g_autofree char *bound = bound_sentence (self);
  g_autofree char *pledged = pledge_sentence (self);

  stead_words_add (text, have);
  stead_words_add (text, bound);
  stead_words_add (text, pledged);
  if (self->build->fund_id == 0)
    stead_words_add (text, _("Choose the fund of the cash book in which its money is kept."));
  return stead_words_end (text);
}

/* --- cautions ----------------------------------------------------------------------------- */

static void
caution (SteadBuildAnswer *self,
         char             *text)
{
  if (text != NULL)
    g_ptr_array_add (self->cautions, text);
}

static char *
dig_caution (const SteadBuildAnswer *self)
{
  g_autofree char *dig = NULL;
  g_autofree char *call = NULL;

  if (self->build->called_on != STEAD_DAY_NONE)
    return g_strdup (_("Dig by hand within 24 in of a mark of a buried line. If the marks fade, ask for new ones."));
  if (self->call_by == STEAD_DAY_NONE)
    return g_strdup (_("Before any hole is dug, have buried lines marked: call 811. The call is free. Dig by hand within 24 in of a mark."));
  dig = stead_day_format (self->build->dig_on, STEAD_DAY_STYLE_LONG);
  call = stead_day_format (self->call_by, STEAD_DAY_STYLE_LONG);
  return g_strdup_printf (_("Call 811 by %s to have buried lines marked before digging on %s. The call is free; days off may lie between."),
                          call, dig);
}

static char *
permit_caution (const SteadBuildAnswer *self)
{
  if (self->build->permit_on != STEAD_DAY_NONE)
    return NULL;
  return g_strdup (_("Ask the school's facilities office and the building office about permits before anything is bought. What needs no permit still has to follow the rules."));
}

/* Work that is done needs no word any more. */
static void
work_cautions (SteadBuildAnswer *self)
{
  g_autoptr(GString) watched = g_string_new (NULL);

  for (guint i = 0; i < self->works->len; i++)
    {
      const SteadBuildWork *work = self->works->pdata[i];

      if (work->text == NULL || work->phase->done_on != STEAD_DAY_NONE)
        continue;
      if (work->flag == STEAD_TOOL_BLOCK)
        caution (self, g_strdup (work->text));
      else
        g_string_append_printf (watched, watched->len == 0 ? "“%s”" : ", “%s”", work->phase->name);
    }
  if (watched->len > 0)
    /* Translators: a list of stretches of work, each in quotes. */
    caution (self, g_strdup_printf (_("An adult watches closely, since the youngest are under 16: %s. The advisor decides; state law and school rules may ask for more."),
                                    watched->str));
}

static void
make_cautions (SteadBuildAnswer *self)
{
  const SteadBuild *build = self->build;

  self->cautions = g_ptr_array_new_with_free_func (g_free);
  if (build->kind == STEAD_BUILD_LIST)
    return;
  caution (self, dig_caution (self));
  caution (self, permit_caution (self));
  if (build->has_shelter || build->kind == STEAD_BUILD_HOOP || build->kind == STEAD_BUILD_RUN)
    caution (self, g_strdup (_("Only amounts are worked out here. Whether it carries snow and stands wind is for a builder or the building office to check.")));
  if (stead_build_answer_find (self, "corner_post") != NULL)
    caution (self, g_strdup (_("Cement burns skin and lungs: gloves, glasses and a dust mask.")));
  if (g_strcmp0 (build->animal, "sheep") == 0)
    caution (self, g_strdup (_("The room for an animal is a floor, not an aim; the extension office goes first. Sheep must not get feed with added copper. A sick animal is a case for a veterinarian.")));
  else if (build->animal != NULL)
    caution (self, g_strdup (_("The room for an animal is a floor, not an aim; the extension office goes first. A sick animal is a case for a veterinarian.")));
  work_cautions (self);
}

/* --- afterwards ------------------------------------------------------------------------- */

char *
stead_build_row_amount (const SteadBuildRow *row,
                        double               packs)
{
  g_autofree char *number = stead_number_format (packs, packs == floor (packs) ? 0 : 1);
  g_autofree char *each = row->pack != 1 ? stead_number_format (row->pack, 1) : NULL;

  if (each != NULL)
    /* Translators: so many packs of so many: "1 × 500". */
    return g_strdup_printf (C_("packs", "%s × %s"), number, each);
  return row->unit != NULL ? g_strdup_printf ("%s %s", number, row->unit) : g_steal_pointer (&number);
}

char *
stead_build_phase_days (const SteadBuildPhase *phase)
{
  g_autofree char *from = phase->from_day != STEAD_DAY_NONE ? stead_day_format (phase->from_day, STEAD_DAY_STYLE_MEDIUM) : NULL;
  g_autofree char *to = phase->to_day != STEAD_DAY_NONE ? stead_day_format (phase->to_day, STEAD_DAY_STYLE_MEDIUM) : NULL;
  g_autofree char *done = phase->done_on != STEAD_DAY_NONE ? stead_day_format (phase->done_on, STEAD_DAY_STYLE_MEDIUM) : NULL;

  if (done != NULL)
    return g_strdup_printf (_("done on %s"), done);
  if (from != NULL && to != NULL)
    /* Translators: first and last day of some work. */
    return g_strdup_printf (_("%s to %s"), from, to);
  return from != NULL ? g_strdup_printf (_("from %s"), from) : g_strdup (_("no day yet"));
}

static char *
compare_sentence (const SteadBuildAnswer *self)
{
  g_autofree char *planned = money (self, self->came_planned_cents);
  g_autofree char *paid = money (self, self->came_paid_cents);
  g_autofree char *apart = money (self, ABS (self->came_paid_cents - self->came_planned_cents));

  if (self->came_planned_cents == 0)
    return NULL;
  if (self->came_paid_cents > self->came_planned_cents)
    /* Translators: cost by the plan, what was paid, how much more that is. */
    return g_strdup_printf (_("It was planned at %s and cost %s: <b>%s more</b>."), planned, paid, apart);
  if (self->came_paid_cents < self->came_planned_cents)
    /* Translators: cost by the plan, what was paid, how much less that is. */
    return g_strdup_printf (_("It was planned at %s and cost %s: <b>%s less</b>."), planned, paid, apart);
  return g_strdup_printf (_("It cost just what was planned, %s."), planned);
}

static char *
make_bought_sentence (const SteadBuildAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *spent = money (self, self->spent_cents);
  g_autofree char *tax = money (self, self->spent_tax_cents);
  g_autofree char *compare = compare_sentence (self);
  g_autofree char *paid = NULL;

  if (self->buys->len == 0 && self->spent_cents == 0)
    stead_words_add (text, _("Nothing was bought yet."));
  else
    {
      paid = self->spent_tax_cents > 0
             /* Translators: money that was paid, and the tax in it. */
             ? g_strdup_printf (_("<b>%s</b> was paid, %s of it sales tax."), spent, tax)
             : g_strdup_printf (_("<b>%s</b> was paid."), spent);
      stead_words_add (text, paid);
      stead_words_add (text, compare);
    }
  return stead_words_end (text);
}

static char *
make_yearly_sentence (const SteadBuildAnswer *self)
{
  g_autofree char *yearly = money (self, self->yearly_cents);
  g_autofree char *wear = money (self, self->wear_cents);
  g_autofree char *all = money (self, self->yearly_cents + self->wear_cents);

  if (self->upkeeps->len == 0)
    return g_strdup (_("What it costs each year is not known yet. Enter feed, hay, bedding and care, so that the pen is no surprise."));
  return g_strdup_printf (_("Each year it costs <b>%s</b> to keep. It also wears down by %s a year, if it stands %d years: %s together."),
                          yearly, wear, STEAD_BUILD_LIFE_YEARS, all);
}

void
stead_build_say (SteadBuildAnswer *self)
{
  self->bought_sentence = make_bought_sentence (self);
  self->yearly_sentence = make_yearly_sentence (self);
  self->sentence = make_sentence (self);
  self->money_sentence = make_money_sentence (self);
  make_cautions (self);
}
