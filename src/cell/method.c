/* Which methods a file asks for. */
#include "cell.h"

bool method_chosen(const struct cell *cell, enum method method)
{
	for (size_t i = 0; i < cell->methods.count; i++)
		if (((const struct word *)cell->methods.rows)[i].value == (int)method)
			return true;
	return false;
}

bool code_chosen(const struct cell *cell)
{
	return method_chosen(cell, METHOD_ACI318) || method_chosen(cell, METHOD_EN1992_4);
}
