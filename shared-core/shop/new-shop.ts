/** What a shop is called until somebody says. The desk knows by it that nobody has set the shop up. */
export const NEW_SHOP_NAME = 'New shop'
