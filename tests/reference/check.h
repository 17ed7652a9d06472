/* check.h - what the areas of the checker share.
 *
 * An area is a table of topics; a topic is a table of asks; an ask is a small
 * function that reads the inputs it needs by name, calls the program's core,
 * and returns a number.  Three rules make the functions small:
 *  1. Reading an input never fails in the caller's eyes.  What is missing or
 *     cannot be read is noted on the row, and the row is then an error whatever
 *     the function returns.
 *  2. Money goes in as cents: check_cents() multiplies by 100, and the answer of
 *     an ask whose unit begins with USD is divided by 100 again.
 *  3. NAN means that there is no such number.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _CheckRow CheckRow;

typedef double (*CheckFunc) (CheckRow *row);

/* One thing that can be asked for; the list ends with a NULL name.  One name may
 * stand there more than once, for more than one unit. */
typedef struct
{
  const char *name;
  const char *unit;
  CheckFunc   func;
} CheckAsk;

/* One computation.  A name of inputs that ends in '#' stands for all with a
 * number there: "c#" for c1, c2 and so on.  The list ends with a NULL name. */
typedef struct
{
  const char     *name;
  const char     *inputs;   /* every name that the topic knows, with spaces between */
  const CheckAsk *asks;
} CheckTopic;

/* The areas. */
extern const CheckTopic check_breakeven_topics[];
extern const CheckTopic check_goods_topics[];
extern const CheckTopic check_shared_topics[];
extern const CheckTopic check_budget_topics[];
extern const CheckTopic check_hens_topics[];
extern const CheckTopic check_default_topics[];
extern const CheckTopic check_fish_topics[];
extern const CheckTopic check_water_topics[];
extern const CheckTopic check_recipe_topics[];
extern const CheckTopic check_planning_topics[];
extern const CheckTopic check_time_topics[];
extern const CheckTopic check_cash_topics[];
extern const CheckTopic check_food_heat_topics[];
extern const CheckTopic check_food_cold_topics[];
extern const CheckTopic check_food_cool_topics[];
extern const CheckTopic check_food_clean_topics[];
extern const CheckTopic check_food_kind_topics[];
extern const CheckTopic check_food_jar_topics[];
extern const CheckTopic check_food_egg_topics[];
extern const CheckTopic check_food_label_topics[];
extern const CheckTopic check_lethality_topics[];
extern const CheckTopic check_crop_topics[];
extern const CheckTopic check_greenhouse_topics[];
extern const CheckTopic check_animals_topics[];
extern const CheckTopic check_fence_topics[];
extern const CheckTopic check_build_topics[];
extern const CheckTopic check_hours_topics[];
extern const CheckTopic check_rules_topics[];

gboolean check_has (CheckRow   *row,
                    const char *name);
double check_number (CheckRow   *row,
                     const char *name);
double check_number_or (CheckRow   *row,
                        const char *name,
                        double      fallback);
double check_cents (CheckRow   *row,
                    const char *name);
double check_cents_or (CheckRow   *row,
                       const char *name,
                       double      fallback);
/* A percent input as a share. */
double check_frac (CheckRow   *row,
                   const char *name);
double check_frac_or (CheckRow   *row,
                      const char *name,
                      double      fallback);

/* An input that may come in one of several units: STEM_UNIT for one of the
 * units, with spaces between, in kg, L, m, m² or °C.  check_from_base() goes back. */
double check_base (CheckRow   *row,
                   const char *stem,
                   const char *units);
gboolean check_has_base (CheckRow   *row,
                         const char *stem,
                         const char *units);
/* The same for a list, to be freed; *@n as for check_list(). */
double *check_base_list (CheckRow   *row,
                         const char *stem,
                         const char *units,
                         gsize      *n);
double check_from_base (double      base,
                        const char *unit);

/* Lists belong to the row.  An input that is not there is a list of 0 numbers
 * for the _or kind, an error for the other; a list of another length than
 * *@n, unless that is 0, is an error. */
const double *check_list (CheckRow   *row,
                          const char *name,
                          gsize      *n);
const double *check_cents_list (CheckRow   *row,
                                const char *name,
                                gsize      *n);
/* Sums of lists; what is not there adds 0. */
double check_cents_sum_or (CheckRow   *row,
                           const char *name);

/* The place of the input's word in the NULL-terminated @words; @fallback if it
 * is not there, which is an error for a fallback below 0. */
int check_word (CheckRow           *row,
                const char         *name,
                const char * const *words,
                int                 fallback);
/* The raw text; "" and an error if it is not there. */
const char *check_text (CheckRow   *row,
                        const char *name);

/* Notes each of the names, with spaces between, that is not there. */
void check_need (CheckRow   *row,
                 const char *names);

/* The place in a list of @n that `item` asks for, from 0; the first without one. */
gsize check_item (CheckRow *row,
                  gsize     n);

/* Notes that an input is missing or wrong; the answer does not count. */
double check_bad_input (CheckRow   *row,
                        const char *name);
/* Answers with a word. */
double check_answer_word (CheckRow   *row,
                          const char *word);
/* Answers that there is none, and why. */
double check_answer_none (CheckRow *row,
                          GError   *error);

/* For asks that only differ in what they take from one figure. */
const char *check_ask_name (CheckRow *row);

G_END_DECLS
