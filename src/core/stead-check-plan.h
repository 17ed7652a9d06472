/* stead-check-plan.h - what must be asked, checked and stopped for what is made and sold.
 *
 * From foods and answers to a list of checks.  The limits are rows of the tables
 * (data/limits); none is written here.
 *
 * Invariants (/core/check-plan/...):
 *  1. Every line and every stop holds at least one row, and every row has a citation.
 *  2. A question is asked only where two of its answers make another list.
 *  3. Without an answer a line takes the stricter case; what would stop a food stops
 *     it only once it is known.
 *
 * The plan never calls food safe: it names what has to be checked, and against what.
 */
#pragma once

#include "core/stead-calendar.h"
#include "core/stead-checklist.h"

G_BEGIN_DECLS

/* --- what is made --------------------------------------------------------------- */

/* How it is kept until it is sold.  The order of the first four is that of the recipes. */
typedef enum
{
  STEAD_CHECK_KEPT_HOT,
  STEAD_CHECK_KEPT_COLD,
  STEAD_CHECK_KEPT_FROZEN,
  STEAD_CHECK_KEPT_ROOM,
  STEAD_CHECK_KEPT_UNKNOWN,   /* asked */
} SteadCheckKept;

typedef enum
{
  STEAD_CHECK_FORM_UNKNOWN,        /* asked */
  STEAD_CHECK_FORM_DISH,           /* made to be eaten */
  STEAD_CHECK_FORM_BAKED,          /* bread, muffins, cookies: dry once baked */
  STEAD_CHECK_FORM_SHELL_EGGS,     /* sold raw in the shell */
  STEAD_CHECK_FORM_RAW_ANIMAL,     /* fish or meat that the buyer cooks */
  STEAD_CHECK_FORM_WHOLE_PRODUCE,  /* sold whole and raw */
  STEAD_CHECK_FORM_PACKAGE,        /* bought sealed, sold as it is, needs no cold */
} SteadCheckForm;

/* A step of a recipe in the words of the limit tables. */
typedef struct
{
  const char *step;      /* (nullable): "cook", "cool", "reheat", "hold_hot", "hold_cold" */
  const char *food;      /* (nullable): "raw_egg" */
  double      least_c;   /* the recipe's own limit where it asks for more, °C; NAN */
  double      most_c;    /* °C; NAN */
  double      hold_s;    /* NAN */
} SteadCheckStep;

/* What is sold of it. */
typedef struct
{
  const char *code;
  SteadDay    made;      /* STEAD_DAY_NONE: not known */
  SteadDay    best_by;   /* STEAD_DAY_NONE: not said */
} SteadCheckLot;

typedef struct
{
  const char           *name;
  SteadCheckForm        form;
  gboolean              recipe;       /* @steps are those of a recipe: what it cooks, and what not, is known */
  const SteadCheckStep *steps;
  gsize                 n_steps;
  const char * const   *parts;        /* (nullable) (array zero-terminated=1): what is in it: words that the
                                       * tables cook ("raw_egg", "poultry", "plant_food") or name
                                       * ("raw_shell_eggs", "cut_tomatoes", "sprouts", "cold_tcs") */
  gboolean              no_cook;      /* nothing in it is cooked */
  const char * const   *allergens;    /* (nullable) (array zero-terminated=1): as the table names them: "egg" */
  SteadCheckKept        kept;
  gboolean              sealed;       /* in jars or packs that nothing gets into */
  gboolean              jar;          /* may be sold in jars: asked, where @kept is not known */
  gboolean              acid_added;
  gboolean              tomato;
  double                ph;           /* finished; NAN: not measured */
  double                aw;           /* NAN: not measured */
  const char           *authority;    /* (nullable): who approved it for sale */
  const SteadCheckLot  *lots;
  gsize                 n_lots;
} SteadCheckFood;

/* --- questions ------------------------------------------------------------------ */

typedef enum
{
  STEAD_CHECK_KEY_EATERS,        /* general, hsp: young children or others at risk, in care */
  STEAD_CHECK_KEY_FORM,          /* of a food: dish, baked, shell_eggs, raw_animal, whole_produce, package */
  STEAD_CHECK_KEY_MADE,          /* here, bought */
  STEAD_CHECK_KEY_COOKED,        /* the first that is in it: poultry, meat_ground … plant_food, none */
  STEAD_CHECK_KEY_DONENESS,      /* full, undercooked, raw */
  STEAD_CHECK_KEY_HELD,          /* at_once, hot, cold, frozen, time, sealed_jar */
  STEAD_CHECK_KEY_EGG_USE,       /* pooled_or_held, immediate_service */
  STEAD_CHECK_KEY_PASTEURIZED,   /* no, yes */
  STEAD_CHECK_KEY_COMBINED,      /* of what is baked: just_before_baking, ahead, pasteurized */
  STEAD_CHECK_KEY_AHEAD,         /* same_day, reheated */
  STEAD_CHECK_KEY_TIME_OPTION,   /* 4, 6 */
  STEAD_CHECK_KEY_KEPT_LONG,     /* more than a day in the cold: yes, no */
  STEAD_CHECK_KEY_AMBIENT,       /* made cold from ingredients at room temperature: yes, no */
  STEAD_CHECK_KEY_THAW,          /* none, refrigeration, running_water, microwave */
  STEAD_CHECK_KEY_SHELF,         /* stands open at room temperature: other, dry */
  STEAD_CHECK_KEY_MADE_IN,       /* a sealed jar: processing_plant, school_kitchen, private_home */
  STEAD_CHECK_KEY_FISH_FEED,     /* fish eaten raw: other, pellets */
  STEAD_CHECK_KEY_EGGS_COLD,     /* yes, no */
  STEAD_CHECK_KEY_MICROWAVE,     /* yes, no */
  STEAD_CHECK_KEY_CARRIED,       /* yes, no */
  STEAD_CHECK_KEY_SANITIZER,     /* chlorine, iodine, quat, hot_water */
  STEAD_CHECK_KEY_WATER_PH,      /* above_8, up_to_8 */
  STEAD_CHECK_KEY_WASH,          /* by_hand, machine */
  STEAD_CHECK_KEY_THERMOMETER,   /* F_only, C_only, dual */
} SteadCheckKey;

#define STEAD_N_CHECK_KEYS (STEAD_CHECK_KEY_THERMOMETER + 1)

/* Stable, for files: "egg_use". */
const char *stead_check_key_id    (SteadCheckKey key);
gboolean    stead_check_key_by_id (const char *id, SteadCheckKey *out);

/* What a person answered. */
typedef struct
{
  SteadCheckKey  key;
  const char    *food;   /* (nullable): the food's name; NULL for the whole list */
  const char    *word;
} SteadCheckAnswered;

typedef struct
{
  SteadCheckKey       key;
  int                 food;      /* its place among the foods; -1: of the whole list */
  const char * const *words;     /* (array zero-terminated=1): all that can be answered */
  const char         *word;      /* (nullable): what was answered; NULL: open */
} SteadCheckQuestion;

/* --- lines ---------------------------------------------------------------------- */

/* In the order of a day's work. */
typedef enum
{
  STEAD_CHECK_STAGE_BEFORE,
  STEAD_CHECK_STAGE_RECEIVE,
  STEAD_CHECK_STAGE_PREPARE,
  STEAD_CHECK_STAGE_COOK,
  STEAD_CHECK_STAGE_COOL,
  STEAD_CHECK_STAGE_REHEAT,
  STEAD_CHECK_STAGE_HOLD,
  STEAD_CHECK_STAGE_CARRY,
  STEAD_CHECK_STAGE_SERVE,
  STEAD_CHECK_STAGE_AFTER,
} SteadCheckStage;

#define STEAD_N_CHECK_STAGES (STEAD_CHECK_STAGE_AFTER + 1)

typedef enum
{
  STEAD_CHECK_LINE_ILL,
  STEAD_CHECK_LINE_HANDS,
  STEAD_CHECK_LINE_BARE_HANDS,
  STEAD_CHECK_LINE_THERMOMETER_ICE,
  STEAD_CHECK_LINE_THERMOMETER_BOIL,
  STEAD_CHECK_LINE_SANITIZER,
  STEAD_CHECK_LINE_SANITIZER_CONTACT,
  STEAD_CHECK_LINE_SURFACES,
  STEAD_CHECK_LINE_SEPARATE_RAW,
  STEAD_CHECK_LINE_ALLERGENS,
  STEAD_CHECK_LINE_DRY_STORE,
  STEAD_CHECK_LINE_EGGS_COLD,
  STEAD_CHECK_LINE_EGGS_SOUND,
  STEAD_CHECK_LINE_RECEIVE_COLD,
  STEAD_CHECK_LINE_RECEIVE_FROZEN,
  STEAD_CHECK_LINE_PRODUCE_WASH,
  STEAD_CHECK_LINE_THAW_COLD,
  STEAD_CHECK_LINE_THAW_WATER,
  STEAD_CHECK_LINE_THAW_WATER_TIME,
  STEAD_CHECK_LINE_THAW_MICROWAVE,
  STEAD_CHECK_LINE_FISH_FREEZING,
  STEAD_CHECK_LINE_FISH_RECORDS,
  STEAD_CHECK_LINE_CHILL_PREPARED,
  STEAD_CHECK_LINE_COOK,
  STEAD_CHECK_LINE_COOK_MICROWAVE,
  STEAD_CHECK_LINE_STAND,            /* covered, after the microwave */
  STEAD_CHECK_LINE_COOL,             /* a pot: readings over time */
  STEAD_CHECK_LINE_REHEAT,
  STEAD_CHECK_LINE_REHEAT_MICROWAVE,
  STEAD_CHECK_LINE_REHEAT_STAND,
  STEAD_CHECK_LINE_REHEAT_TIME,
  STEAD_CHECK_LINE_HOLD_HOT,
  STEAD_CHECK_LINE_HOLD_COLD,
  STEAD_CHECK_LINE_HOLD_FROZEN,
  STEAD_CHECK_LINE_TIME_START,
  STEAD_CHECK_LINE_TIME_DURING,
  STEAD_CHECK_LINE_TIME_END,
  STEAD_CHECK_LINE_DATE_MARK,
  STEAD_CHECK_LINE_JAR_PH,
  STEAD_CHECK_LINE_JAR_PROCESS,
  STEAD_CHECK_LINE_JAR_RECORDS,
  STEAD_CHECK_LINE_CARRY_HOT,
  STEAD_CHECK_LINE_CARRY_COLD,
  STEAD_CHECK_LINE_CARRY_FROZEN,
  STEAD_CHECK_LINE_ADVISORY,
  STEAD_CHECK_LINE_ALLERGEN_NOTICE,
  STEAD_CHECK_LINE_EGG_CARTON,
  STEAD_CHECK_LINE_UTENSILS,
  STEAD_CHECK_LINE_LEFTOVERS,
  STEAD_CHECK_LINE_WASH_HAND,
  STEAD_CHECK_LINE_WASH_MACHINE,
} SteadCheckLineKind;

#define STEAD_N_CHECK_LINE_KINDS (STEAD_CHECK_LINE_WASH_MACHINE + 1)

/* Stable, for files: "hold_hot". */
const char *stead_check_line_kind_id    (SteadCheckLineKind kind);
gboolean    stead_check_line_kind_by_id (const char *id, SteadCheckLineKind *out);
const char *stead_check_stage_id        (SteadCheckStage stage);

typedef enum
{
  STEAD_CHECK_TOOL_NONE,        /* eyes */
  STEAD_CHECK_TOOL_PROBE,       /* a thin probe in the thickest part */
  STEAD_CHECK_TOOL_AIR,         /* a thermometer that hangs in the air */
  STEAD_CHECK_TOOL_STRIP,       /* test strip for the sanitizer, with a thermometer */
  STEAD_CHECK_TOOL_PH_METER,
  STEAD_CHECK_TOOL_INDICATOR,   /* of heat, that does not go back: a dish machine */
  STEAD_CHECK_TOOL_CLOCK,
} SteadCheckTool;

typedef enum
{
  STEAD_CHECK_OFTEN_ONCE,       /* before the work begins */
  STEAD_CHECK_OFTEN_DELIVERY,   /* each delivery */
  STEAD_CHECK_OFTEN_PORTION,    /* each pot, pan or order */
  STEAD_CHECK_OFTEN_EVERY,      /* each so many hours: @often_limit */
  STEAD_CHECK_OFTEN_TASK,       /* before each task and after each dirty one */
  STEAD_CHECK_OFTEN_ENDS,       /* when leaving, and on arrival */
  STEAD_CHECK_OFTEN_END,        /* when the work is over */
} SteadCheckOften;

typedef enum
{
  STEAD_CHECK_WHO_EVERYONE,
  STEAD_CHECK_WHO_LEAD,         /* the person in charge */
  STEAD_CHECK_WHO_COOK,
  STEAD_CHECK_WHO_SERVER,
} SteadCheckWho;

typedef struct
{
  SteadCheckLineKind  kind;
  SteadCheckStage     stage;
  int                 food;          /* its place among the foods; -1: general */
  const char         *subject;       /* (nullable): in the words of the tables: "raw_egg" */
  const char         *use;           /* (nullable): what makes the sentence another one: "pooled_or_held" */
  const char         *measure;       /* (nullable): what is read: "food_temp"; NULL: a tick */
  const char         *unit;          /* (nullable): in which the limit stands: "F" */
  GPtrArray          *rows;          /* of const SteadLimit, one at least; they belong to the table */
  gboolean            all;           /* all rows must be met; FALSE: any one is enough */
  SteadCheckTool      tool;
  SteadCheckOften     often;
  const SteadLimit   *often_limit;   /* (nullable): the row that says how often */
  SteadCheckWho       who;
  double              own_least_c, own_most_c, own_hold_s;  /* the recipe's own; NAN */
} SteadCheckLine;

/* --- stops ---------------------------------------------------------------------- */

typedef enum
{
  STEAD_CHECK_STOP_LOW_ACID,           /* sealed, and not acid enough */
  STEAD_CHECK_STOP_UNTESTED,           /* sealed, its acidity was not measured */
  STEAD_CHECK_STOP_DOUBT,              /* a tomato sauce between the two limits */
  STEAD_CHECK_STOP_AUTHORITY,          /* sealed, nobody approved its process */
  STEAD_CHECK_STOP_HOME,               /* sealed in a private home */
  STEAD_CHECK_STOP_EGGS_WARM,
  STEAD_CHECK_STOP_EGGS_UNDERCOOKED,   /* to people at risk */
  STEAD_CHECK_STOP_EGGS_POOLED,        /* likewise */
  STEAD_CHECK_STOP_EGGS_TIME,          /* likewise */
  STEAD_CHECK_STOP_RAW_ANIMAL,         /* likewise: raw or undercooked fish or meat */
  STEAD_CHECK_STOP_GROUND_MEAT,        /* undercooked, for children */
  STEAD_CHECK_STOP_SPROUTS,            /* to people at risk */
  STEAD_CHECK_STOP_ROOM,               /* needs heat or cold, and has neither */
  STEAD_CHECK_STOP_LOT_OVER,           /* a lot past its last day */
} SteadCheckStopKind;

#define STEAD_N_CHECK_STOPS (STEAD_CHECK_STOP_LOT_OVER + 1)

const char *stead_check_stop_id (SteadCheckStopKind kind);

/* The legal way round. */
typedef enum
{
  STEAD_CHECK_WAY_COLD,            /* sell it cold or frozen, with a date */
  STEAD_CHECK_WAY_TEST,            /* measure the pH; until then as above */
  STEAD_CHECK_WAY_AUTHORITY,       /* a process authority and a regulated plant; until then cold */
  STEAD_CHECK_WAY_DISCARD_EGGS,    /* not these eggs */
  STEAD_CHECK_WAY_PASTEURIZED,     /* pasteurized eggs, or one order cooked through */
  STEAD_CHECK_WAY_COOK_THROUGH,
  STEAD_CHECK_WAY_LEAVE_OUT,
  STEAD_CHECK_WAY_HOLD,            /* hot, cold, or by time with a mark */
  STEAD_CHECK_WAY_DISCARD,
} SteadCheckWay;

const char *stead_check_way_id (SteadCheckWay way);

typedef struct
{
  SteadCheckStopKind  kind;
  int                 food;     /* -1: all with eggs */
  int                 lot;      /* its place among the food's lots; -1: all of the food */
  const SteadLimit   *row;      /* that decides */
  SteadCheckWay       way;
} SteadCheckStop;

/* --- the plan ------------------------------------------------------------------- */

typedef struct
{
  const SteadCheckFood     *foods;
  gsize                     n_foods;
  const SteadCheckAnswered *answers;      /* those to questions that are not asked do not matter */
  gsize                     n_answers;
  SteadDay                  day;          /* of making or selling */
  const char               *cooling;      /* (nullable): wording in force: "food_code" (usual), "additional_4h" */
  const char               *state;        /* (nullable): "Washington": a rule of its own */
} SteadCheckCase;

typedef struct
{
  GPtrArray        *questions;   /* of SteadCheckQuestion: the eaters, food by food, the kitchen */
  GPtrArray        *lines;       /* of SteadCheckLine, by stage */
  GPtrArray        *stops;       /* of SteadCheckStop */
  SteadProcessKind *processes;   /* of each food */
  gsize             n_foods;
  guint             n_open;      /* questions without an answer */
  GStringChunk     *strings;
} SteadCheckPlan;

/**
 * stead_check_plan_new:
 * @table: the limits in force, with stricter local ones; must outlive the plan
 * @given: what is made, and what was answered; may go once the plan is there
 *
 * Sources: the rows; the process of each food as stead_process_kind() has it.
 *
 * Returns: (transfer full): the plan
 */
SteadCheckPlan *stead_check_plan_new (const SteadLimitTable *table,
                                      const SteadCheckCase  *given) G_GNUC_WARN_UNUSED_RESULT;
void stead_check_plan_free (SteadCheckPlan *plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCheckPlan, stead_check_plan_free)

/**
 * stead_check_plan_equal:
 * Returns: whether two plans ask for the same: lines, rows and stops; questions do not count
 */
gboolean stead_check_plan_equal (const SteadCheckPlan *a,
                                 const SteadCheckPlan *b);

G_END_DECLS
