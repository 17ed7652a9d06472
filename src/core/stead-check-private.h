/* stead-check-private.h - what the parts of the plan of checks share. */
#pragma once

#include "core/stead-check-plan.h"

G_BEGIN_DECLS

typedef enum
{
  CHECK_HOLD_AT_ONCE,
  CHECK_HOLD_HOT,
  CHECK_HOLD_COLD,
  CHECK_HOLD_FROZEN,
  CHECK_HOLD_TIME,
  CHECK_HOLD_SEALED,   /* a jar at room temperature */
  CHECK_HOLD_SHELF,    /* open at room temperature */
} CheckHold;

#define CHECK_COOKED_MOST 8

/* One food, with all that matters settled. */
typedef struct
{
  const SteadCheckFood *food;
  int                   index;
  SteadCheckForm        form;
  CheckHold             hold;
  const char           *cooked[CHECK_COOKED_MOST];   /* words of the table "cook" */
  guint                 n_cooked;
  gboolean              from_recipe;    /* a recipe says what is cooked */
  gboolean              bought;         /* ready to eat in a package from a regulated plant */
  const char           *doneness;       /* "full", "undercooked", "raw" */
  const char           *egg_use;        /* (nullable): of eggs that are cooked */
  gboolean              shell_eggs;     /* broken here, or sold in the shell */
  gboolean              raw_animal;     /* raw fish, meat, poultry or eggs are handled */
  gboolean              produce;
  gboolean              cools;
  gboolean              reheats;
  gboolean              ambient;        /* made cold out of what stood at room temperature */
  gboolean              kept_long;
  gboolean              tcs;            /* needs heat, cold or a clock */
  gboolean              unheld;         /* … and has none */
  const char           *thaw;           /* (nullable) */
  const char           *time_option;    /* (nullable) */
} CheckRoute;

typedef struct
{
  const SteadLimitTable *table;
  const SteadCheckCase  *given;
  SteadCheckPlan        *plan;
  CheckRoute            *routes;
  gboolean               hsp;
} CheckMaker;

/**
 * check_ask:
 * @food: the place of the food; -1 for the whole list
 * @words: what can be answered
 * @assumed: what holds until it is answered
 *
 * Called only where the answer makes a difference: the question is put down.
 *
 * Returns: the answer, or @assumed
 */
const char *check_ask (CheckMaker         *maker,
                       SteadCheckKey       key,
                       int                 food,
                       const char * const *words,
                       const char         *assumed);

/* Likewise of "yes" and "no". */
gboolean check_ask_yes (CheckMaker    *maker,
                        SteadCheckKey  key,
                        int            food,
                        gboolean       assumed);

void     check_route       (CheckMaker *maker, int food);
gboolean check_has_part    (const SteadCheckFood *food, const char *part);
gboolean check_cooks       (const CheckRoute *route, const char *word);
gboolean check_is_animal   (const char *word);
/* Whether anything in it is heated, be it not enough. */
gboolean check_heats       (const CheckRoute *route);

/* Adds a line with the rows of @rows (transfer full), unless there are none. */
SteadCheckLine *check_add (CheckMaker         *maker,
                           SteadCheckLineKind  kind,
                           int                 food,
                           const char         *subject,
                           GPtrArray          *rows);
/* All rows that fit; the ids that are there. */
GPtrArray *check_rows (CheckMaker *maker, const char *process, const char *subject, const char *measure,
                       const SteadLimitFact *facts);
GPtrArray *check_ids  (CheckMaker *maker, const char *first, ...) G_GNUC_NULL_TERMINATED;

void check_food_lines    (CheckMaker *maker, const CheckRoute *route);
void check_general_lines (CheckMaker *maker);
void check_stops         (CheckMaker *maker, const CheckRoute *route);
void check_egg_stop      (CheckMaker *maker);

G_END_DECLS
