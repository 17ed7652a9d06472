/* stead-currency.c - the currencies that a farm may keep its books in. */
#include "config.h"

#include "core/stead-money.h"

/* One currency of ISO 4217.  A farm has one, so its own sign is enough: a
 * Canadian farm reads "$" and knows whose. */
typedef struct
{
  const char *code;
  const char *symbol;
  int         digits;
} Currency;

/* Source: ISO 4217, list one (codes and minor units; from memory). */
static const Currency currencies[] = {
  { "USD", "$", 2 },
  { "AUD", "$", 2 },
  { "BRL", "R$", 2 },
  { "CAD", "$", 2 },
  { "CHF", "CHF", 2 },
  { "CLP", "$", 0 },
  { "COP", "$", 2 },
  { "CRC", "₡", 2 },
  { "CZK", "Kč", 2 },
  { "DKK", "kr", 2 },
  { "DOP", "RD$", 2 },
  { "EUR", "€", 2 },
  { "GBP", "£", 2 },
  { "GTQ", "Q", 2 },
  { "HNL", "L", 2 },
  { "INR", "₹", 2 },
  { "JPY", "¥", 0 },
  { "KES", "KSh", 2 },
  { "KRW", "₩", 0 },
  { "MXN", "$", 2 },
  { "NOK", "kr", 2 },
  { "NZD", "$", 2 },
  { "PEN", "S/", 2 },
  { "PHP", "₱", 2 },
  { "PLN", "zł", 2 },
  { "SEK", "kr", 2 },
  { "TND", "DT", 3 },
  { "UGX", "USh", 0 },
  { "ZAR", "R", 2 },
};

static const char *currency_codes[G_N_ELEMENTS (currencies) + 1];

static const Currency *
currency_by_code (const char *code)
{
  for (gsize i = 0; code != NULL && i < G_N_ELEMENTS (currencies); i++)
    if (g_str_equal (currencies[i].code, code))
      return &currencies[i];
  return NULL;
}

gboolean
stead_currency_is_known (const char *currency)
{
  return currency_by_code (currency) != NULL;
}

int
stead_currency_digits (const char *currency)
{
  const Currency *known = currency_by_code (currency);

  g_return_val_if_fail (known != NULL, 2);
  return known->digits;
}

const char *
stead_currency_symbol (const char *currency)
{
  const Currency *known = currency_by_code (currency);

  g_return_val_if_fail (known != NULL, "");
  return known->symbol;
}

const char * const *
stead_currency_list (void)
{
  static gsize ready = 0;

  if (g_once_init_enter (&ready))
    {
      for (gsize i = 0; i < G_N_ELEMENTS (currencies); i++)
        currency_codes[i] = currencies[i].code;
      g_once_init_leave (&ready, 1);
    }
  return currency_codes;
}
